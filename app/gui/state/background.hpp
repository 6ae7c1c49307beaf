// One question's newest answer, worked out off the frame thread.
#pragma once

#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <thread>
#include <vector>

namespace pourbook {

/// What all questions of a session have in common: how to wake the frames, and what to do with answers that rest on a
/// catalogue about to change.
class BackgroundWork {
public:
    virtual ~BackgroundWork() = default;
    /// Takes in an answer that has arrived; true while a thread still works.
    virtual bool busy() = 0;
    /// Drops the answer and the question, so that it is asked afresh. Not while busy.
    virtual void forget() = 0;
    virtual bool working() const = 0;
};

struct BackgroundWorks {
    std::function<void()> wake;
    std::vector<BackgroundWork*> all = {};
};

/// Owned and asked by the frame thread only. The work runs on a thread of its own, one at a time; a question asked
/// meanwhile waits, and only the newest waits. `wake` is called from that thread when an answer is there. Destruction
/// waits for the work.
template <class Answer> class Background : public BackgroundWork {
public:
    explicit Background(BackgroundWorks& works) : wake_(works.wake), arrived_(std::make_shared<Arrived>()) {
        works.all.push_back(this);
    }
    Background(const Background&) = delete;
    Background& operator=(const Background&) = delete;

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

    bool working() const override { return running_ || waiting_; }
    bool busy() override {
        collect();
        return running_;
    }
    void forget() override {
        asked_ = no_question;
        waiting_ = nullptr;
        answer_.reset();
    }
    /// Rises with each answer.
    std::size_t serial() const { return serial_; }

private:
    static constexpr const char* no_question = "\n";
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
    std::string asked_ = no_question;
    std::function<Answer()> waiting_;
    std::optional<Answer> answer_;
    bool running_ = false;
    std::size_t serial_ = 0;
    std::jthread thread_;
};

} // namespace pourbook
