// One question's newest answer, worked out off the frame thread.
#pragma once

#include "core/progress.hpp"
#include "core/result.hpp"
#include "platform/thread.hpp"

#include <atomic>
#include <chrono>
#include <exception>
#include <functional>
#include <memory>
#include <mutex>
#include <new>
#include <optional>
#include <string>
#include <type_traits>
#include <utility>
#include <vector>

namespace pourbook {

/// What all questions of a session have in common: how to wake the frames, and what to do with answers that rest on a
/// catalogue about to change.
class BackgroundWork {
public:
    virtual ~BackgroundWork() = default;
    /// Takes in an answer that has arrived; true while a thread still works.
    virtual bool busy() = 0;
    /// Once a frame: takes in what arrived and starts what waits, also where no panel asks any more.
    virtual void tick() = 0;
    /// Drops the answer and the question, so that it is asked afresh. Not while busy.
    virtual void forget() = 0;
    virtual bool working() const = 0;

    /// Share done of the running work, 0 where it doesn't tell; how long it has been running.
    virtual double done() const = 0;
    virtual double running_s() const = 0;
    /// Stops the work; the question stays unanswered until it is asked anew or another is asked.
    virtual void cancel() = 0;
    virtual bool cancelled() const = 0;
    virtual void ask_anew() = 0;
};

struct BackgroundWorks {
    std::function<void()> wake;
    std::vector<BackgroundWork*> all = {};
};

/// Owned and asked by the frame thread only. The work runs on a thread of its own, one at a time; a question asked
/// meanwhile tells the running work to stop and waits for it, and only the newest waits. `wake` is called from that
/// thread when an answer is there and at each per cent of progress. Destruction stops the work and waits for it.
/// Questions are told apart by `==`: the value holds all that the answer depends on, and no NaN.
template <class Question, class Answer> class Background : public BackgroundWork {
public:
    explicit Background(BackgroundWorks& works) : wake_(works.wake) { works.all.push_back(this); }
    ~Background() override { stop(); }
    Background(const Background&) = delete;
    Background& operator=(const Background&) = delete;

    /// The newest answer there is (of an earlier question while this one is worked on), or null. `work` must not touch
    /// anything that changes; it is only kept where the question is new. It may take a Progress to tell how far it is
    /// and to be stopped; what it answers after it was stopped is dropped.
    template <class Work> const Answer* ask(const Question& question, Work&& work) {
        collect();
        if (!asked_ || !(*asked_ == question)) {
            asked_ = question;
            waiting_ = with_progress(std::forward<Work>(work));
            cancelled_ = false;
            stop();
        }
        if (waiting_ && !running_) start();
        return answer_.get();
    }

    bool working() const override { return running_ || waiting_; }
    bool busy() override {
        collect();
        return running_;
    }
    void tick() override {
        sweep();
        collect();
        if (waiting_ && !running_) start();
    }
    void forget() override {
        ask_anew();
        waiting_ = nullptr;
        answer_.reset();
        good_.reset();
    }
    double done() const override { return run_ ? run_->done.load() : 0; }
    double running_s() const override {
        return running_ ? std::chrono::duration<double>(std::chrono::steady_clock::now() - began_).count() : 0;
    }
    /// Of an answer that may be refused: while it is, the last one that was not; else null.
    const Answer* last_good() const { return good_.get(); }
    /// Rises with each answer.
    std::size_t serial() const { return serial_; }

    void cancel() override {
        if (!working()) return;
        stop();
        waiting_ = nullptr;
        cancelled_ = true;
    }
    bool cancelled() const override { return cancelled_; }
    void ask_anew() override { asked_.reset(); }

private:
    struct Run {
        std::atomic<bool> stop = false;
        std::atomic<double> done = 0;
        std::mutex guard;
        std::unique_ptr<Answer> answer;
    };
    using Working = std::function<Answer(const Progress&)>;

    template <class Work> static Working with_progress(Work&& work) {
        if constexpr (std::is_invocable_v<Work, const Progress&>)
            return std::forward<Work>(work);
        else
            return [work = std::forward<Work>(work)](const Progress&) { return work(); };
    }

    /// No exception leaves the thread: what went wrong is the answer, or the answer is empty.
    static std::unique_ptr<Answer> caught(const Working& work, const Progress& progress) {
        std::string why;
        try {
            return std::make_unique<Answer>(work(progress));
        } catch (const std::bad_alloc&) {
            why = "this is too large for the memory";
        } catch (const std::exception& e) {
            why = std::string("this could not be worked out: ") + e.what();
        }
        if constexpr (std::is_constructible_v<Answer, Problem>)
            return std::make_unique<Answer>(refused(why));
        else
            return std::make_unique<Answer>();
    }

    void keep_good(const Answer& next) {
        if constexpr (requires { next.problem(); }) {
            if (next)
                good_.reset();
            else if (answer_ && *answer_)
                good_ = std::move(answer_);
        }
    }

    void stop() {
        if (run_) run_->stop = true;
    }

    void collect() {
        if (!run_) return;
        {
            const std::lock_guard lock(run_->guard);
            if (!run_->answer) return;
            if (!run_->stop) {
                keep_good(*run_->answer);
                std::swap(answer_, run_->answer);
                ++serial_;
            }
        }
        done_with_.push_back(std::move(run_));
        run_ = nullptr;
        running_ = false;
    }

    /// Taking apart an answer about very many metals takes longer than a frame may; this frame may still look at it.
    void sweep() {
        if (!done_with_.empty())
            sweeper_ = platform::Thread([old = std::exchange(done_with_, {})]() mutable { old.clear(); });
    }

    void start() {
        running_ = true;
        began_ = std::chrono::steady_clock::now();
        run_ = std::make_shared<Run>();
        thread_ = platform::Thread([work = std::move(waiting_), run = run_, wake = wake_] {
            const Progress progress = [&](double done) {
                const bool new_percent = static_cast<int>(done * 100) != static_cast<int>(run->done * 100);
                run->done = done;
                if (new_percent && wake) wake();
                return !run->stop;
            };
            std::unique_ptr<Answer> answer = caught(work, progress);
            {
                const std::lock_guard lock(run->guard);
                run->answer = std::move(answer);
            }
            if (wake) wake();
        });
        waiting_ = nullptr;
    }

    std::function<void()> wake_;
    std::shared_ptr<Run> run_;
    std::vector<std::shared_ptr<Run>> done_with_; // with the answers they took the place of
    std::optional<Question> asked_;
    Working waiting_;
    std::unique_ptr<Answer> answer_, good_;
    bool running_ = false;
    bool cancelled_ = false;
    std::size_t serial_ = 0;
    std::chrono::steady_clock::time_point began_;
    platform::Thread thread_, sweeper_;
};

} // namespace pourbook
