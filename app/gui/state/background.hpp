// One question's newest answer, worked out off the frame thread.
#pragma once

#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <thread>

namespace pourbook {

/// Owned and asked by the frame thread only. The work runs on a thread of its own, one at a time; a question asked
/// meanwhile waits, and only the newest waits. `wake` is called from that thread when an answer is there. Destruction
/// waits for the work.
template <class Answer> class Background {
public:
    explicit Background(std::function<void()> wake) : wake_(std::move(wake)), arrived_(std::make_shared<Arrived>()) {}

    /// The newest answer there is (of an earlier question while this one is worked on), or null. `work` must not touch
    /// anything that changes; it is only kept where the question is new.
    template <class Work> const Answer* ask(const std::string& question, Work&& work) {
        collect();
        if (question != asked_) {
            asked_ = question;
            waiting_ = std::forward<Work>(work);
        }
        if (waiting_ && !running_) start();
        return answer_ ? &*answer_ : nullptr;
    }

    bool working() const { return running_ || waiting_; }
    /// Rises with each answer.
    std::size_t serial() const { return serial_; }

private:
    struct Arrived {
        std::mutex guard;
        std::optional<Answer> answer;
    };

    void collect() {
        const std::lock_guard lock(arrived_->guard);
        if (!arrived_->answer) return;
        answer_ = std::move(arrived_->answer);
        arrived_->answer.reset();
        running_ = false;
        ++serial_;
    }

    void start() {
        running_ = true;
        thread_ = std::jthread([work = std::move(waiting_), arrived = arrived_, wake = wake_] {
            Answer answer = work();
            {
                const std::lock_guard lock(arrived->guard);
                arrived->answer = std::move(answer);
            }
            if (wake) wake();
        });
        waiting_ = nullptr;
    }

    std::function<void()> wake_;
    std::shared_ptr<Arrived> arrived_;
    std::string asked_ = "\n"; // no question
    std::function<Answer()> waiting_;
    std::optional<Answer> answer_;
    bool running_ = false;
    std::size_t serial_ = 0;
    std::jthread thread_;
};

} // namespace pourbook
