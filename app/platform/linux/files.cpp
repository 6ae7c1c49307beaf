#include "platform/files.hpp"

#include <cerrno>
#include <cstring>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace pourbook::platform {
namespace {

/// 0, or the system's error number.
int write_all(int file, const std::string& bytes) {
    for (std::size_t done = 0; done < bytes.size();) {
        const ssize_t count = ::write(file, bytes.data() + done, bytes.size() - done);
        if (count < 0 && errno != EINTR) return errno;
        if (count > 0) done += static_cast<std::size_t>(count);
    }
    return ::fsync(file) == 0 || errno == EINVAL ? 0 : errno; // EINVAL: a file system that knows no syncing
}

Problem problem(const std::string& path, int number) {
    return {Problem::Kind::file, "'" + path + "' can't be written: " + std::strerror(number), 0};
}

/// The file that links lead to, there already or not; empty where they lead in a ring.
std::filesystem::path behind_links(std::filesystem::path path) {
    std::error_code error;
    for (int links = 0; links < 40; ++links) {
        if (!std::filesystem::is_symlink(path, error)) return path;
        const std::filesystem::path next = std::filesystem::read_symlink(path, error);
        path = next.is_absolute() ? next : path.parent_path() / next;
    }
    return {};
}

} // namespace

std::optional<Problem> write_file(const std::string& path, const std::string& bytes) {
    std::error_code error;
    const std::filesystem::path target = behind_links(path); // a link stays
    if (target.empty()) return problem(path, ELOOP);
    if (std::filesystem::is_directory(target, error)) return problem(path, EISDIR);
    if (std::filesystem::exists(target, error) && !std::filesystem::is_regular_file(target, error))
        return Problem{Problem::Kind::file, "'" + path + "' can't be written: it is no ordinary file", 0};
    struct stat old {};
    const bool there = ::stat(target.c_str(), &old) == 0;
    if (there && (old.st_mode & 0222) == 0) return problem(path, EACCES); // write-protected on purpose
    const std::string beside = draft_name(target.string(), "part");
    const int file = ::open(beside.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_NOFOLLOW | O_CLOEXEC, 0666);
    if (file < 0) return problem(path, errno);
    int fault = write_all(file, bytes);
    if (fault == 0 && there && ::fchmod(file, old.st_mode & 0777) != 0) fault = errno;
    if (::close(file) != 0 && fault == 0) fault = errno;
    if (fault == 0 && ::rename(beside.c_str(), target.c_str()) != 0) fault = errno;
    if (fault == 0) return std::nullopt;
    ::unlink(beside.c_str());
    return problem(path, fault);
}

bool make_private(const std::string& path) {
    const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
    return file >= 0 && ::close(file) == 0;
}

std::string file_identity(const std::string& path) {
    struct stat file {};
    if (::stat(path.c_str(), &file) != 0) return {};
    return std::to_string(file.st_dev) + ":" + std::to_string(file.st_ino);
}

std::string draft_name(const std::string& path, const std::string& ending) {
    return path + "." + std::to_string(::getpid()) + "." + ending;
}

} // namespace pourbook::platform
