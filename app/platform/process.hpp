// The running program among others: its terminal, and those who ask it to stop.
#pragma once

namespace pourbook::platform {

/// Before anything is opened: a stream that was closed when the program began stays unwritable, so that no file takes
/// its number and gets the answer; a limit on file sizes is an error to report, not a death; and the terminal's width,
/// which a shell knows but seldom hands on, stands in COLUMNS.
void prepare_process();

/// Whether a person watches.
bool answer_goes_to_terminal();
bool messages_go_to_terminal();

/// Asked for by what can stop half way; from the first time on, Ctrl-C is heard instead of ending the program.
bool asked_to_stop();

} // namespace pourbook::platform
