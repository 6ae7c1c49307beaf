"""WebAssembly checks that a function is called with as many arguments as it has; natively one more does no harm, and cairo relies on it: a spline's
points go to functions that take no tangent. Here each of those gets a companion that takes one and leaves it. usage: points_of_splines.py CAIRO/src"""
import os
import re
import sys

TAKES = {"cairo-path-fill.c": ["_cairo_filler_line_to"], "cairo-path-in-fill.c": ["_cairo_in_fill_line_to"], "cairo-path-stroke-traps.c": ["line_to_dashed"],
         "cairo-path-stroke.c": ["_cairo_stroker_line_to_dashed", "_cairo_stroker_line_to"]}
COMPANION = """
static cairo_status_t {name}_of_spline (void *closure, const cairo_point_t *point, const cairo_slope_t *tangent)
{{ (void) tangent; return {call}; }}
"""


def after_definition(text, name, companion):
    begin = re.search(rf"^{name} \([^;{{]*\)\n\{{", text, re.MULTILINE).start()
    end = text.index("\n}\n", begin) + 3
    return text[:end] + companion + text[end:]


def changed(file, text):
    for name in TAKES.get(file, []):
        text = after_definition(text, name, COMPANION.format(name=name, call=f"{name} (closure, point)"))
        text = re.sub(rf"\(cairo_spline_add_point_func_t\)\s*{name}\b", name + "_of_spline", text)
    if file == "cairo-path-fixed.c":
        call = "((cpf_t *) closure)->line_to (((cpf_t *) closure)->closure, point)"
        text = after_definition(text, "_cpf_line_to", COMPANION.format(name="_cpf_line_to", call=call))
        text = re.sub(r"\(cairo_spline_add_point_func_t\)cpf->line_to,\s*cpf->closure,", "_cpf_line_to_of_spline, cpf,", text)
    return text


for file in [*TAKES, "cairo-path-fixed.c"]:
    path = os.path.join(sys.argv[1], file)
    with open(path, encoding="utf-8") as source:
        text = source.read()
    if "_of_spline" not in text:
        with open(path, "w", encoding="utf-8") as out:
            out.write(changed(file, text))
