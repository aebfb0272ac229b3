#!/usr/bin/env python3
"""A web server on this machine that misbehaves in each way that archives and networks do.

    with MisbehavingServer() as server: …   # server.base, server.asked

What it does is told by the first part of the path, the rest is the name of a file:
/good/ghcnd-stations.txt, /cut-off/all/XX000000001.dly. `asked` lists every request as
(way, rest of the path, headers).
"""

import gzip
import http.server
import threading
import time

DAY = "   85  X"
MISSING = "-9999   "


def dly(station, first_year, last_year):
    """Invented: nights of 8.5 °C and days of 8.5 °C in every slot of every month's first 28 days."""
    lines = []
    for year in range(first_year, last_year + 1):
        for month in range(1, 13):
            for element in ("TMAX", "TMIN"):
                lines.append(f"{station}{year}{month:02}{element}" + DAY * 28 + MISSING * 3)
    return "\n".join(lines) + "\n"


STATIONS = """\
XX000000001 -33.0000   19.0000  200.0    INVENTED SLOPE
XX000000002 -33.1000   19.2000  950.0    INVENTED PEAK                  GSN     99999
XX000000003 -33.0500   19.1000 -999.9    KLOOF DES PRéS
XX000000004 -33.0000   19.0100  210.0    RAIN ONLY
short
"""

INVENTORY = """\
XX000000001 -33.0000   19.0000 TMAX 1961 2025
XX000000001 -33.0000   19.0000 TMIN 1961 2025
XX000000002 -33.1000   19.2000 TMAX 1981 2025
XX000000002 -33.1000   19.2000 TMIN 1981 2025
XX000000003 -33.0500   19.1000 TMAX 1990 1999
XX000000003 -33.0500   19.1000 TMIN 1990 1999
XX000000004 -33.0000   19.0100 PRCP 1961 2025
"""

OPEN_JSON = """\
{"latitude": -33.0, "longitude": 19.0, "timezone": "Africa/Johannesburg",
 "daily_units": {"time": "iso8601", "temperature_2m_max": "°C", "temperature_2m_min": "°C"},
 "daily": {"time": ["2026-02-01", "2026-02-02"], "temperature_2m_max": [28.1, 29.0],
           "temperature_2m_min": [14.2, null]}}
"""

POWER_CSV = """\
-BEGIN HEADER-
NASA/POWER invented for a test
-END HEADER-
YEAR,DOY,T2M_MAX,T2M_MIN
2026,1,28.1,14.2
"""

HTML = "<!DOCTYPE html>\n<html><body>TMIN TMAX: please log in</body></html>\n"


def content(path):
    name = path.split("?")[0]
    if name.endswith("ghcnd-stations.txt"):
        return STATIONS
    if name.endswith("ghcnd-inventory.txt"):
        return INVENTORY
    if name.endswith(".dly"):
        return dly(name.rsplit("/", 1)[1].removesuffix(".dly"), 2020, 2024)
    if name.startswith("/v1/"):
        return OPEN_JSON
    if name.startswith("/api/temporal/"):
        return POWER_CSV
    return None


class Handler(http.server.BaseHTTPRequestHandler):
    protocol_version = "HTTP/1.1"

    def log_message(self, *_):
        pass

    def send(self, status, body=b"", headers=(), length=None):
        self.send_response(status)
        for name, value in headers:
            self.send_header(name, value)
        self.send_header("Content-Length", str(len(body) if length is None else length))
        self.send_header("Connection", "close")
        self.end_headers()
        self.wfile.write(body)
        self.close_connection = True

    def do_GET(self):
        way, rest = self.path[1:].split("/", 1)
        rest = "/" + rest
        with self.server.lock:
            before = sum(1 for asked in self.server.asked if asked[:2] == (way, rest))
            self.server.asked.append((way, rest, dict(self.headers)))
        text = content(rest)
        body = text.encode() if text is not None else None
        act = getattr(self, "way_" + way.replace("-", "_"))
        try:
            if body is None:
                self.send(404, b"nothing here")
            else:
                act(body, before)
        except (BrokenPipeError, ConnectionResetError):
            pass

    TAGS = (("ETag", '"one"'), ("Last-Modified", "Sun, 01 Mar 2026 06:00:00 GMT"))

    def way_good(self, body, before):
        if self.headers.get("If-None-Match") == '"one"':
            self.send(304, headers=self.TAGS, length=0)
        else:
            self.send(200, body, self.TAGS)

    def way_packed(self, body, before):
        packed = "gzip" in self.headers.get("Accept-Encoding", "")
        self.send(200, gzip.compress(body) if packed else body,
                  (("Content-Encoding", "gzip"),) if packed else ())

    def way_missing(self, body, before):
        self.send(404, b"not here")

    def way_forbidden(self, body, before):
        self.send(403, b"no")

    def way_busy(self, body, before):
        if before == 0:
            self.send(429, b"slow down", (("Retry-After", "1"),))
        else:
            self.send(200, body)

    def way_busy_for_long(self, body, before):
        self.send(429, b"slow down", (("Retry-After", "86400"),))

    def way_faulty_once(self, body, before):
        if before == 0:
            self.send(500, b"oh")
        else:
            self.send(200, body)

    def way_faulty(self, body, before):
        self.send(503, b"oh")

    def way_slow(self, body, before):
        self.send(200, body[:10], length=len(body))
        self.wfile.flush()
        self.server.stop.wait(20)

    def way_silent(self, body, before):
        self.server.stop.wait(20)

    def way_cut_off(self, body, before):
        """Half of it each time, and no word of how to continue."""
        self.send(200, body[:len(body) // 2], length=len(body))

    def part(self, body):
        """The first byte asked for, when the part asked for is of this very version."""
        wanted = self.headers.get("Range", "")
        if wanted.startswith("bytes=") and self.headers.get("If-Range") == '"one"':
            return int(wanted.removeprefix("bytes=").removesuffix("-"))
        return 0

    def way_resumes(self, body, before):
        """Half of it at first, the rest when asked for."""
        start = self.part(body)
        if start == 0:
            self.send(200, body[:len(body) // 2], self.TAGS, length=len(body))
        else:
            self.send(206, body[start:], (*self.TAGS, ("Content-Range",
                                          f"bytes {start}-{len(body) - 1}/{len(body)}")))

    def way_ignores_range(self, body, before):
        self.send(200, body if before else body[:len(body) // 2], self.TAGS, length=len(body))

    def way_wrong_range(self, body, before):
        if before == 0:
            self.send(200, body[:len(body) // 2], self.TAGS, length=len(body))
        elif before == 1:
            self.send(206, body, (*self.TAGS, ("Content-Range", f"bytes 0-{len(body) - 1}/{len(body)}")))
        else:
            self.send(200, body, self.TAGS)

    def way_too_short(self, body, before):
        """Says that it is shorter than it is."""
        self.send(200, body, length=len(body) - 40)

    def way_too_long(self, body, before):
        self.send(200, body, length=len(body) + 40)

    def way_says_huge(self, body, before):
        self.send(200, body, length=1 << 40)

    def way_bomb(self, body, before):
        """A few hundred kilobytes that unpack to 200 MB."""
        self.send(200, gzip.compress(b"0" * 200_000_000, 6), (("Content-Encoding", "gzip"),))

    def way_loop(self, body, before):
        self.send(302, headers=(("Location", self.path),))

    def way_moved(self, body, before):
        self.send(301, headers=(("Location", self.path.replace("/moved/", "/good/", 1)),))

    def way_to_http(self, body, before):
        self.send(302, headers=(("Location", "http://archive.invalid/file"),))

    def way_to_file(self, body, before):
        self.send(302, headers=(("Location", "file:///etc/hostname"),))

    def way_html(self, body, before):
        self.send(200, HTML.encode())

    def way_other(self, body, before):
        self.send(200, b'{"error": true, "reason": "invented"}\n')

    def way_empty(self, body, before):
        self.send(200, b"")

    def way_unasked_304(self, body, before):
        self.send(304, length=0)


class MisbehavingServer:
    def __enter__(self):
        self.http = http.server.ThreadingHTTPServer(("127.0.0.1", 0), Handler)
        self.http.daemon_threads = True
        self.http.asked, self.http.lock, self.http.stop = [], threading.Lock(), threading.Event()
        self.asked = self.http.asked
        self.base = f"http://127.0.0.1:{self.http.server_address[1]}"
        threading.Thread(target=self.http.serve_forever, daemon=True).start()
        return self

    def __exit__(self, *_):
        self.close()

    def close(self):
        self.http.stop.set()
        self.http.shutdown()
        self.http.server_close()


if __name__ == "__main__":
    with MisbehavingServer() as running:
        print(running.base, flush=True)
        while True:
            time.sleep(3600)
