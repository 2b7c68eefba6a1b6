// What is put into the page and its thread to measure them.

/** In the thread: it answers as late as a processor so many times slower would, and tells its own time. */
export function brake(slowdown) {
  if (typeof document !== "undefined" || globalThis.hasBrake) return;
  globalThis.hasBrake = true;
  const own = globalThis.postMessage.bind(globalThis);
  // The one kind of memory that a thread may sleep on without further headers.
  const { buffer } = new WebAssembly.Memory({ initial: 1, maximum: 1, shared: true });
  const sleep = (ownMs) => Atomics.wait(new Int32Array(buffer), 0, 0, (slowdown - 1) * ownMs);
  let began = 0;
  addEventListener("message", () => {
    began = performance.now();
  });
  globalThis.postMessage = (thought) => {
    if (thought.ahead !== undefined) return own(thought);
    const ownMs = performance.now() - began;
    sleep(ownMs);
    own({ ...thought, ownMs });
  };
  // What it thinks ahead of the next question takes its time too.
  const later = globalThis.setTimeout;
  globalThis.setTimeout = (then, ms) =>
    later(() => {
      const start = performance.now();
      then();
      sleep(performance.now() - start);
    }, ms);
}

/** In the page: when an answer was tapped, when the first ranking after it was seen. */
export function watch() {
  /** A ranking that changes nothing on the screen by then changes nothing. */
  const UNCHANGED_MS = 300;
  const watched = { answered: [], isWarm: false };
  globalThis.watched = watched;
  let tapped;
  addEventListener(
    "click",
    ({ target, timeStamp }) => {
      if (target.closest?.(".question .option")) tapped = timeStamp;
    },
    true,
  );
  const seen = (then) => {
    const back = performance.now();
    const observer = new MutationObserver(() => {
      stop();
      requestAnimationFrame(() => {
        // Handed out after the frame that has just begun.
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => then(performance.now());
        port2.postMessage(0);
      });
    });
    const late = setTimeout(() => {
      stop();
      then(back);
    }, UNCHANGED_MS);
    const stop = () => {
      observer.disconnect();
      clearTimeout(late);
    };
    const all = { subtree: true, childList: true, characterData: true, attributes: true };
    observer.observe(document.body, all);
  };
  const Own = globalThis.Worker;
  globalThis.Worker = class extends Own {
    postMessage(message) {
      const from = tapped;
      if (!message.advice) tapped = undefined;
      this.addEventListener("message", () => {
        watched.isWarm = true;
      });
      if (from !== undefined && !message.advice) {
        const answer = { after: 0, thread: 0 };
        watched.answered.push(answer);
        // Thought ahead: it is in the drawing that comes now.
        if (message.isKnown) {
          seen((at) => {
            answer.after = at - from;
          });
        }
        const hear = ({ data }) => {
          seen((at) => {
            answer.after = at - from;
            answer.thread = data.ownMs;
          });
        };
        if (!message.isKnown) this.addEventListener("message", hear, { once: true });
      }
      super.postMessage(message);
    }
  };
}
