// What does the broken engine sound like? One beat for each stroke that burns, at the angle at which it fires,
// in the cycles as they were driven; only the rhythm is physics, the beat itself is a plain thump.
import type { Engine } from "@half-order/core";
import type { WatchedRegime } from "@half-order/core/physics";

const CYCLE_DEG = 720;

/** Seconds from the start at which a stroke burns, over the cycles that are shown. */
export function beatTimes(engine: Engine, { cycles, shake }: WatchedRegime): readonly number[] {
  const cycleS = 120 / shake.rhythm.meanRpm;
  return cycles
    .flatMap((missed, cycle) =>
      engine.order
        .filter((c) => !missed.includes(c))
        .map((c) => cycleS * (cycle + (engine.angles[c] ?? 0) / CYCLE_DEG)),
    )
    .sort((a, b) => a - b);
}

const LEAD_S = 0.1;
const BEAT = { startHz: 140, endHz: 60, seconds: 0.07, loudness: 0.4 } as const;

/** Plays the cycles and stops by itself; `onEnd` is called when it has, or was stopped. */
export function playBeats(engine: Engine, now: WatchedRegime, onEnd: () => void): () => void {
  const context = new AudioContext();
  const start = context.currentTime + LEAD_S;
  for (const at of beatTimes(engine, now)) thump(context, start + at);
  const seconds = LEAD_S + (now.cycles.length * 120) / now.shake.rhythm.meanRpm;
  const stop = (): void => {
    clearTimeout(timer);
    // A context that is closed already refuses to be closed.
    if (context.state === "closed") return;
    void context.close();
    onEnd();
  };
  const timer = setTimeout(stop, seconds * 1000);
  return stop;
}

function thump(context: AudioContext, at: number): void {
  const tone = context.createOscillator();
  const loudness = context.createGain();
  tone.type = "triangle";
  tone.frequency.setValueAtTime(BEAT.startHz, at);
  tone.frequency.exponentialRampToValueAtTime(BEAT.endHz, at + BEAT.seconds);
  loudness.gain.setValueAtTime(BEAT.loudness, at);
  loudness.gain.exponentialRampToValueAtTime(0.001, at + BEAT.seconds);
  tone.connect(loudness).connect(context.destination);
  tone.start(at);
  tone.stop(at + BEAT.seconds);
}
