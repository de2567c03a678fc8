"""Chromium over its debugging protocol, by a pipe: pages opened, clicked and typed into as a reader does."""

from __future__ import annotations

import base64
import json
import os
import subprocess
import tempfile
import time
from pathlib import Path
from typing import Any

CHROMIUM = Path("/usr/bin/chromium")
WAIT_S = 20.0


class Browser:
    """One page in a browser without a window. Messages are JSON, each ended by a zero byte."""

    def __init__(self, *, width: int = 1280, height: int = 860, scripts: bool = True) -> None:
        self._folder = tempfile.TemporaryDirectory(prefix="browser-", ignore_cleanup_errors=True)
        to_browser, self._write = os.pipe()
        self._read, from_browser = os.pipe()
        self._process = subprocess.Popen(
            [CHROMIUM, "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--remote-debugging-pipe",
             f"--user-data-dir={self._folder.name}", f"--window-size={width},{height}", "about:blank"],
            stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
            preexec_fn=lambda: [os.dup2(to_browser, 3), os.dup2(from_browser, 4)].clear(),
            pass_fds=(3, 4),
        )  # fmt: skip
        os.close(to_browser)
        os.close(from_browser)
        self._number, self._rest, self.events = 0, b"", list[dict[str, Any]]()
        target = self._send("Target.createTarget", {"url": "about:blank"})["targetId"]
        self._session = self._send("Target.attachToTarget", {"targetId": target, "flatten": True})["sessionId"]
        for domain in ("Page", "Runtime", "Log", "Network"):
            self._send(f"{domain}.enable")
        if not scripts:
            self._send("Emulation.setScriptExecutionDisabled", {"value": True})

    _session: str | None = None

    def __enter__(self) -> Browser:
        return self

    def __exit__(self, *_: object) -> None:
        self._process.kill()
        self._process.wait()
        os.close(self._write)
        os.close(self._read)
        self._folder.cleanup()

    def _message(self) -> dict[str, Any]:
        while b"\0" not in self._rest:
            got = os.read(self._read, 1 << 20)
            if not got:
                raise EOFError("the browser has ended")
            self._rest += got
        text, _, self._rest = self._rest.partition(b"\0")
        message: dict[str, Any] = json.loads(text)
        return message

    def _send(self, method: str, params: dict[str, Any] | None = None) -> dict[str, Any]:
        self._number += 1
        message = {"id": self._number, "method": method, "params": params or {}}
        if self._session:
            message["sessionId"] = self._session
        os.write(self._write, json.dumps(message).encode() + b"\0")
        while True:
            answer = self._message()
            if answer.get("id") == self._number:
                assert "error" not in answer, answer
                result: dict[str, Any] = answer["result"]
                return result
            self.events.append(answer)

    def open(self, address: str) -> None:
        self.events.clear()
        self._send("Page.navigate", {"url": address})
        self.wait("document.readyState === 'complete'")

    def run(self, script: str) -> Any:
        """Return the value of an expression in the page."""
        answer = self._send("Runtime.evaluate", {"expression": script, "returnByValue": True, "awaitPromise": True})
        assert "exceptionDetails" not in answer, answer
        return answer["result"].get("value")

    def wait(self, condition: str) -> None:
        """Wait until an expression is true."""
        end = time.monotonic() + WAIT_S
        while time.monotonic() < end:
            if self.run(condition):
                return
            time.sleep(0.05)
        raise AssertionError(f"never true: {condition}")

    def click(self, selector: str) -> None:
        """Press and release the mouse in the middle of the first element."""
        where = self.run(
            f"(e => {{ e.scrollIntoView({{block: 'nearest'}}); const b = e.getBoundingClientRect();"
            f" return [b.x + b.width / 2, b.y + b.height / 2]; }})(document.querySelector({json.dumps(selector)}))"
        )
        for kind in ("mousePressed", "mouseReleased"):
            self.mouse(kind, *where)

    def mouse(self, kind: str, x: float, y: float, **more: Any) -> None:
        params = {"type": kind, "x": x, "y": y, "button": "left", "clickCount": 1, **more}
        self._send("Input.dispatchMouseEvent", params)

    def key(self, key: str) -> None:
        text = {"Enter": "\r"}.get(key, key if len(key) == 1 else "")
        for kind in ("keyDown", "keyUp"):
            code = {"Enter": 13, "Tab": 9}.get(key, 0)
            self._send("Input.dispatchKeyEvent", {"type": kind, "key": key, "text": text if kind == "keyDown" else "",
                                                  "windowsVirtualKeyCode": code})  # fmt: skip

    def write(self, text: str) -> None:
        self._send("Input.insertText", {"text": text})

    def picture(self, path: Path) -> None:
        path.write_bytes(base64.b64decode(self._send("Page.captureScreenshot")["data"]))

    def pdf(self) -> bytes:
        answer = self._send("Page.printToPDF", {"preferCSSPageSize": True, "printBackground": True})
        return base64.b64decode(answer["data"])

    def complaints(self) -> list[str]:
        """Return what the console was told: faults of scripts, what a policy refused."""
        self.run("0")
        told = []
        for event in self.events:
            if event.get("method") == "Log.entryAdded":
                told.append(event["params"]["entry"]["text"])
            if event.get("method") == "Runtime.exceptionThrown":
                told.append(str(event["params"]["exceptionDetails"]))
        return told

    def requests(self) -> list[str]:
        """Return the addresses that the page asked for, data within it left out."""
        sent = [each["params"] for each in self.events if each.get("method") == "Network.requestWillBeSent"]
        return [each["request"]["url"] for each in sent if not each["request"]["url"].startswith("data:")]
