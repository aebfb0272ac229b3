# Huber's line through invented pairs of nights, by R's own robust regression. Run by hand:
#   Rscript tests/reference/climate/robust_line.R > tests/reference/climate/robust_line.txt
# What it printed stands in robust_line.txt, and robust_line_test.cpp compares with it.
library(MASS)

station <- c(3.1, 4.4, 5.0, 5.2, 6.7, 7.3, 7.9, 8.8, 9.1, 9.6, 10.3, 11.0, 11.4, 12.2, 12.9, 13.5,
             14.1, 14.8, 15.6, 16.2)
logger <- c(5.6, 6.2, 7.4, 7.0, 8.9, 9.0, 9.9, 19.5, 10.8, 11.0, 12.1, 12.3, 13.1, 13.4, 14.6, 4.0,
            15.4, 16.2, 16.5, 17.8)

show <- function(name, ...) cat(name, formatC(c(...), digits = 10, format = "f"), "\n")

line <- rlm(logger ~ I(station - mean(station)), psi = psi.huber, k = 1.345, scale.est = "MAD",
            maxit = 500, acc = 1e-12)
show("line", coef(line), line$s)
level <- rlm(I(logger - station) ~ 1, psi = psi.huber, k = 1.345, scale.est = "MAD", maxit = 500,
             acc = 1e-12)
show("level", coef(level), level$s)
cat("#", R.version.string, "MASS", as.character(packageVersion("MASS")), "\n")
