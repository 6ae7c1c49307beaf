"""A plain file server: no header of its own; it remembers what it was asked for."""
import functools
import http.server
import socketserver
import threading


class Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *_):
        self.server.asked.append(self.path)


class Server(socketserver.ThreadingTCPServer):
    allow_reuse_address = daemon_threads = True


def serve(folder):
    server = Server(("127.0.0.1", 0), functools.partial(Quiet, directory=folder))
    server.asked = []
    threading.Thread(target=server.serve_forever, daemon=True).start()
    return server, f"http://127.0.0.1:{server.server_address[1]}/"
