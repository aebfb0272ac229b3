# Prints the figures that the tests in this folder hold. R and survival as the first line says; run: Rscript recorded.R
library(survival)
options(digits = 12)
cat(R.version.string, "survival", as.character(packageVersion("survival")), "\n")

# A hazard by the coolest window so far (°C), invented counts: seeds still waiting and seeds that came, a look each.
waiting <- c(40, 40, 38, 33, 25, 30, 30, 29, 24, 15)
came <- c(0, 2, 5, 8, 9, 0, 1, 5, 9, 6)
window_c <- c(19.5, 17.2, 15.8, 14.1, 12.6, 18.8, 17.9, 15.1, 13.0, 11.4)
second <- c(0, 0, 0, 0, 0, 1, 1, 1, 1, 1)
for (link in c("cloglog", "logit")) {
  fit <- glm(cbind(came, waiting - came) ~ window_c + second, family = binomial(link),
             control = glm.control(epsilon = 1e-14, maxit = 100))
  cat(link, coef(fit), deviance(fit), "\n")
  cat("standard errors", sqrt(diag(vcov(fit))), "\n")
}

# Life tables of Singer and Willett (2003) as person-period data.
risk <- c(72, 70, 68, 60, 52, 42, 108, 95, 90, 74, 53, 38)
left <- c(2, 2, 8, 8, 10, 8, 13, 5, 16, 21, 15, 18)
period <- factor(rep(1:6, 2))
group <- rep(0:1, each = 6)
for (link in c("logit", "cloglog")) {
  fit <- glm(cbind(left, risk - left) ~ 0 + period + group, family = binomial(link),
             control = glm.control(epsilon = 1e-14, maxit = 100))
  ones <- sum(-2 * (left * log(fitted(fit)) + (risk - left) * log1p(-fitted(fit))))
  cat(link, coef(fit), ones, "\n")
}

# Remission times, Freireich et al. (1963).
time <- c(10, 7, 32, 23, 22, 6, 16, 34, 32, 25, 11, 20, 19, 6, 17, 35, 6, 13, 9, 6, 10)
event <- c(1, 1, 0, 1, 1, 1, 1, 0, 0, 0, 0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 0)
km <- summary(survfit(Surv(time, event) ~ 1, conf.type = "log-log"))
print(data.frame(km$time, km$n.risk, km$surv, km$std.err, km$lower, km$upper), digits = 12)
placebo <- c(1, 22, 3, 12, 8, 17, 2, 11, 8, 12, 2, 5, 4, 15, 8, 23, 5, 11, 4, 1, 8)
both <- survdiff(Surv(c(time, placebo), c(event, rep(1, 21))) ~ rep(0:1, each = 21))
cat("log-rank", both$chisq, both$obs, both$exp, both$var[1, 1], 1 - pchisq(both$chisq, 1), "\n")

# Shares.
for (k in list(c(7, 25), c(0, 12), c(12, 12), c(1, 40))) {
  exact <- binom.test(k[1], k[2])$conf.int
  wilson <- prop.test(k[1], k[2], correct = FALSE)$conf.int
  jeffreys <- qbeta(c(0.025, 0.975), k[1] + 0.5, k[2] - k[1] + 0.5)
  cat("share", k, exact, wilson, jeffreys, "\n")
}
cat("beta quantile", qbeta(c(0.1, 0.5, 0.9), 3.7, 11.2), "\n")
f <- fisher.test(matrix(c(7, 18, 15, 10), 2))
cat("fisher", f$p.value, f$estimate, f$conf.int, "\n")
cat("less", fisher.test(matrix(c(7, 18, 15, 10), 2), alternative = "less")$p.value, "\n")
cat("three arms", fisher.test(matrix(c(7, 18, 15, 10, 11, 9), 2))$p.value, "\n")

# Beta-binomial by maximum likelihood, eight invented sowings.
k <- c(3, 12, 7, 0, 18, 9, 5, 14)
n <- c(20, 25, 20, 15, 25, 30, 10, 20)
minus <- function(p) -sum(lbeta(k + exp(p[1]), n - k + exp(p[2])) - lbeta(exp(p[1]), exp(p[2])) + lchoose(n, k))
best <- optim(c(0, 0), minus, method = "BFGS", control = list(reltol = 1e-15, maxit = 1000))
cat("beta-binomial", exp(best$par), best$value, "\n")

# Conditional odds ratios with roots to the last digits; fisher.test itself stops at about 1e-4.
conditional <- function(k, n, k2, n2) {
  all <- k + k2
  support <- max(0, all - n2):min(n, all)
  logs <- lchoose(n, support) + lchoose(n2, all - support)
  chances <- function(t) { p <- exp(logs + support * t); p / sum(p) }
  root <- function(f) exp(uniroot(f, c(-20, 20), tol = 1e-14)$root)
  c(root(function(t) sum(support * chances(t)) - k),
    root(function(t) sum(chances(t)[support >= k]) - 0.025),
    root(function(t) sum(chances(t)[support <= k]) - 0.025))
}
cat("odds", conditional(2, 17, 10, 13), conditional(7, 25, 15, 25), "\n")

# Families of twelve by number of boys (Geissler 1889, counts from memory).
k <- 0:12; n <- 12; families <- c(3, 24, 104, 286, 670, 1033, 1343, 1112, 829, 478, 181, 45, 7)
minus <- function(p) -sum(families * (lbeta(k + exp(p[1]), n - k + exp(p[2])) - lbeta(exp(p[1]), exp(p[2]))))
best <- nlm(minus, c(3.5, 3.4), gradtol = 1e-12, steptol = 1e-14, iterlim = 1000)
cat("families", exp(best$estimate), "\n")
