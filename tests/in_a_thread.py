"""Coroutines of tests, run in a thread of their own: a browser that another test has open keeps a loop in this one."""

import asyncio
from concurrent.futures import ThreadPoolExecutor


def run_apart(work):
    """What a coroutine returns."""
    with ThreadPoolExecutor(1) as pool:
        return pool.submit(asyncio.run, work).result()
