// How long the next step takes on the full catalogue, and what more time buys.

/** Prints medians over situations of a six with a rail. */
export async function benchNext({ rounds = 9 } = {}) {
  const { next, profileById } = await import("../../packages/core/dist/index.js");
  const profile = profileById("generic.v6.123456.rail");
  const all = [
    { finding: "lamp", answer: "steady" },
    { finding: "complaint.main", answer: "shakes-at-idle" },
    { finding: "codes", answer: ["P0302", "P0305"] },
    { finding: "onset", answer: "weeks" },
    { finding: "regime.worst", answer: "idle" },
    { finding: "plug.age", answer: "over-100" },
    { finding: "smell", answer: ["petrol"] },
    { finding: "plug.look", cylinder: 2, answer: "wet-petrol" },
    { finding: "spark", cylinder: 2, answer: "none" },
    { finding: "spark", cylinder: 5, answer: "strong" },
  ];
  console.log(
    "\nNext step on the full catalogue, six with a rail (goal: a first step within 50 ms)",
  );
  console.log(
    "answers   first step ms (median, worst)   expected minutes at once, after 100 ms, 1 s",
  );
  for (const answers of [1, 3, 5, 7, 10]) {
    const findings = all.slice(0, answers);
    const times = [];
    for (let round = 0; round < rounds; round++) {
      const begin = performance.now();
      next(profile, findings, { maxWork: 0 });
      times.push(performance.now() - begin);
    }
    const expected = [0, 100, 1000].map((milliseconds) => {
      const end = performance.now() + milliseconds;
      const budget = { maxWork: 1e6, isEnough: () => performance.now() > end };
      return next(profile, findings, budget).expectedMinutes.toFixed(1).padStart(8);
    });
    times.sort((a, b) => a - b);
    const median = times[Math.floor(rounds / 2)].toFixed(0).padStart(8);
    const worst = times[rounds - 1].toFixed(0).padStart(6);
    console.log(
      `${String(answers).padStart(7)} ${median} ${worst}                 ${expected.join("")}`,
    );
  }
}
