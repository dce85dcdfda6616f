"""Runs the notebook on standard input in a kernel and writes it, with its outputs, to standard output.

    /usr/bin/python3 run-notebook.py <kernel name> < notebook.ipynb

Used instead of nbconvert because the kernel may announce a cell done before it sends that cell's result, which nbconvert then
drops (one or two results in every third run when tried). Here a result goes to the cell it answers, whenever it comes, and the
run ends when the result of one more cell has come, behind all others.
"""
import sys

import nbformat
from jupyter_client.manager import start_new_kernel

SECONDS = 60
notebook = nbformat.read(sys.stdin, as_version=4)
manager, client = start_new_kernel(kernel_name=sys.argv[1])
try:

    def run(source):
        request = client.execute(source)
        reply = client.get_shell_msg(timeout=SECONDS)
        while reply["parent_header"].get("msg_id") != request:
            reply = client.get_shell_msg(timeout=SECONDS)
        if reply["content"]["status"] != "ok":
            sys.exit("\n".join([source, *reply["content"].get("traceback", [])]))
        return request

    cells = {}
    for cell in notebook.cells:
        if cell.cell_type == "code":
            cell.outputs = []
            cells[run(cell.source)] = cell
    last = run("1")
    answered = None
    while answered != last:
        message = client.get_iopub_msg(timeout=SECONDS)
        if message["header"]["msg_type"] not in ("execute_result", "display_data", "stream"):
            continue
        answered = message["parent_header"].get("msg_id")
        if answered in cells:
            cells[answered].outputs.append(nbformat.v4.output_from_msg(message))
    nbformat.write(notebook, sys.stdout)
finally:
    client.stop_channels()
    manager.shutdown_kernel(now=True)
