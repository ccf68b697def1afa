"""Find a Chromium for the browser tests, or bring one: `python -m tests.browser.chromium`."""

from __future__ import annotations

import os
import platform
import shutil
import subprocess
import sys
from pathlib import Path

FLAGS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    # The address bar's lists are pages of their own: twice the work of ours for every window.
    "--disable-features=WebUIOmniboxPopup,WebUIOmniboxAimPopup",
)
"""What lets Chromium start as root, stay quiet in a closed network, and do no work but ours."""

NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome")
MAC_APPS = (
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
)


def find_chromium() -> str | None:
    """Return the path of a Chromium: PULLCORD_CHROMIUM, an installed one, or Playwright's."""
    named = os.environ.get("PULLCORD_CHROMIUM")
    if named:
        return named
    installed = [path for name in NAMES if (path := shutil.which(name))]
    apps = [app for app in MAC_APPS if Path(app).exists()]
    return next(iter([*installed, *apps]), None) or _find_downloaded()


def _find_downloaded() -> str | None:
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        path = playwright.chromium.executable_path
    return path if Path(path).exists() else None


def bring_chromium() -> None:
    """Install a Chromium with Debian's packages when root, else with Playwright's download."""
    if shutil.which("apt-get") and os.geteuid() == 0:
        environment = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
        subprocess.run(["apt-get", "update", "-qq"], check=False, env=environment)
        subprocess.run(
            ["apt-get", "install", "-y", "-qq", "chromium"], check=False, env=environment
        )
    if find_chromium() is None:
        subprocess.run([sys.executable, "-m", "playwright", "install", "chromium"], check=False)


def main() -> int:
    """Make sure there is a browser; say what is missing if there cannot be one."""
    if find_chromium() is None:
        bring_chromium()
    path = find_chromium()
    if path is None:
        print(f"No Chromium for the browser tests on this {platform.system()} machine.")
        print("Install Chromium or Chrome, or name one: PULLCORD_CHROMIUM=/path/to/chromium")
        return 1
    print(f"Browser tests use {path}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
