// What the drawings of plugs show, in words.
import type { PlugDamage, PlugGap, PlugLook } from "../diagram/plug-geometry.ts";

interface LookWords {
  /** As on a button. */
  readonly name: string;
  /** By what the eye or the nose knows it. */
  readonly hint: string;
  /** What the drawing shows. */
  readonly drawn: string;
}

export const PLUG = {
  looks: {
    tan: {
      name: "Tan or grey, dry",
      hint: "a thin dust, edges sharp",
      drawn: "The nose is tan or grey with a thin dry dust.",
    },
    pale: {
      name: "White or blistered",
      hint: "bubbles, beads of metal",
      drawn: "The nose is white and blistered, with beads of melted metal on the pin.",
    },
    "dry-black": {
      name: "Dry black soot",
      hint: "velvet, wipes off on a finger",
      drawn: "Dull black soot lies on the nose, the pin and the strap like velvet.",
    },
    "wet-petrol": {
      name: "Wet with petrol",
      hint: "thin, clear, smells of petrol",
      drawn:
        "Thin clear drops hang on the nose and the rim, and vapour rises: it smells of petrol.",
    },
    "wet-oil": {
      name: "Wet black oil",
      hint: "thick, shiny, slippery",
      drawn: "Thick shiny black oil covers the nose and runs over the rim in tongues.",
    },
    wet: {
      name: "Wet, I can't tell with what",
      hint: "drops, no clear smell",
      drawn: "Drops hang on the nose and the rim; with what it is wet is not known.",
    },
    crust: {
      name: "Coloured crust",
      hint: "lumps that do not wipe off",
      drawn: "Hard coloured lumps sit on the nose and the strap.",
    },
    "steam-clean": {
      name: "Strikingly clean",
      hint: "as if washed, nothing on it",
      drawn: "The nose is bright and bare as if it had been washed.",
    },
  } satisfies Record<PlugLook, LookWords>,
  damages: {
    none: "No damage.",
    crack: "A jagged crack runs down the porcelain, and a chip is out of its edge.",
    track: "A burnt line with side shoots runs down the porcelain.",
    "worn-round": "Pin and strap are worn round; dashes show where their edges were.",
    bent: "The strap is bent, its tip stands askew.",
  } satisfies Record<PlugDamage, string>,
  gaps: {
    closed: "The strap all but touches the pin.",
    "in-limit": "The gap is in limit.",
    wide: "The gap is too wide.",
    "very-wide": "The gap is far too wide.",
  } satisfies Record<PlugGap, string>,
  unseen: "Not looked at",
};

export const PICKER = {
  row: "The plugs as they came out, front of the engine on the left",
  seat: (cylinder: string, look: string): string => `Plug of cylinder ${cylinder}: ${look}`,
  which: (cylinder: string): string => `Which is most like the plug of cylinder ${cylinder}?`,
  cannotTell: "Can't tell",
};
