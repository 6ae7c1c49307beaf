#include "answers/writers/write_file.hpp"

#include <cerrno>
#include <cstring>
#include <filesystem>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace pourbook {
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

} // namespace

std::optional<Problem> write_file(const std::string& path, const std::string& bytes) {
    std::error_code error;
    std::filesystem::path target = path;
    if (std::filesystem::is_symlink(target, error))
        target = std::filesystem::weakly_canonical(target, error); // the link stays
    if (std::filesystem::is_directory(target, error)) return problem(path, EISDIR);
    if (std::filesystem::exists(target, error) && !std::filesystem::is_regular_file(target, error))
        return Problem{Problem::Kind::file, "'" + path + "' can't be written: it is no ordinary file", 0};
    const std::string beside = target.string() + "." + std::to_string(::getpid()) + ".part";
    const int file = ::open(beside.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_NOFOLLOW | O_CLOEXEC, 0666);
    if (file < 0) return problem(path, errno);
    int fault = write_all(file, bytes);
    struct stat old {};
    if (fault == 0 && ::stat(target.c_str(), &old) == 0 && ::fchmod(file, old.st_mode & 0777) != 0) fault = errno;
    if (::close(file) != 0 && fault == 0) fault = errno;
    if (fault == 0 && ::rename(beside.c_str(), target.c_str()) != 0) fault = errno;
    if (fault == 0) return std::nullopt;
    ::unlink(beside.c_str());
    return problem(path, fault);
}

} // namespace pourbook
