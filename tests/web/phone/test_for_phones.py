"""Starting it: what it finds out by itself, and the sentence for each thing that keeps it from starting."""

from __future__ import annotations

import os
import socket
import subprocess
import threading
from pathlib import Path

import pytest

from tests.web.test_app import free_port
from web import for_phones
from web.phone import addresses, proxy
from web.phone.addresses import addresses_here, name_here
from web.settings import CannotStart


def test_addresses_that_are_given_count(monkeypatch: pytest.MonkeyPatch) -> None:
    assert addresses_here("192.168.1.20 10.0.0.2") == ["192.168.1.20", "10.0.0.2"]
    with pytest.raises(CannotStart, match="ADDRESSES holds no IPv4 address"):
        addresses_here("boathouse")


def test_the_address_by_which_others_are_reached_comes_first(monkeypatch: pytest.MonkeyPatch) -> None:
    listed = subprocess.CompletedProcess([], 0, stdout="172.17.0.1 192.168.1.20 fd00::2 \n")
    monkeypatch.setattr(subprocess, "run", lambda *_, **__: listed)
    monkeypatch.setattr(addresses, "_usual", lambda: "192.168.1.20")
    assert addresses_here("") == ["192.168.1.20", "172.17.0.1"]


def test_a_machine_in_no_network_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(subprocess, "run", lambda *_, **__: subprocess.CompletedProcess([], 0, stdout="\n"))
    with pytest.raises(CannotStart, match="in no network"):
        addresses_here("")


@pytest.mark.parametrize(
    ("host", "name"), [("Boathouse.club.example", "boathouse.local"), ("a_b", ""), ("", "")]
)
def test_the_name_is_that_of_the_local_network(monkeypatch: pytest.MonkeyPatch, host: str, name: str) -> None:
    monkeypatch.setattr(socket, "gethostname", lambda: host)
    assert name_here() == name


def starting(monkeypatch: pytest.MonkeyPatch, data: Path, **environment: str) -> int:
    for name, value in {"DATA_DIR": str(data), "ADDRESSES": "127.0.0.1", **environment}.items():
        monkeypatch.setenv(name, value)
    return for_phones.main([])


def test_a_port_that_is_taken_is_told_with_the_way_out(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with socket.socket() as taken:
        taken.bind(("", 0))
        taken.listen()
        port = str(taken.getsockname()[1])
        assert starting(monkeypatch, tmp_path, SECURE_PORT=port) == 1
    said = capsys.readouterr().err
    assert said.startswith(f"Slipway cannot start: nothing can listen at port {port} (")
    assert "give another port with SECURE_PORT or PLAIN_PORT" in said


def test_a_proxy_that_is_missing_is_told(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(proxy, "WHERE", str(tmp_path))
    assert starting(monkeypatch, tmp_path) == 1
    assert "sudo apt-get install haproxy" in capsys.readouterr().err


def test_a_proxy_that_ends_by_itself_ends_the_app_and_is_told(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    (tmp_path / "haproxy").write_text("#!/bin/sh\nexit 7\n")
    (tmp_path / "haproxy").chmod(0o755)
    monkeypatch.setattr(proxy, "WHERE", str(tmp_path))
    stopped = threading.Event()
    monkeypatch.setattr(os, "kill", lambda *_: stopped.set())
    with pytest.raises(proxy.ProxyEnded, match="status 7"):  # noqa: SIM117 - what is inside is to end first
        with proxy.proxy(tmp_path, tmp_path / "server.pem", free_port(), free_port(), 1):
            assert stopped.wait(20)


def test_a_bad_setting_is_told(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert starting(monkeypatch, tmp_path, SECURE_PORT="https") == 1
    assert 'SECURE_PORT is "https": write a number from 1 to 65535' in capsys.readouterr().err
