// The words of what only older engines have.

export const OLDER = {
  asked: "Has its engine one of these?",
  short: { switching: "Contact breaker", fuelling: "Carburettor" },
  whole: {
    switching: "It has a contact breaker in the distributor, instead of electronics.",
    fuelling: "It has a carburettor, instead of injection.",
  },
};
