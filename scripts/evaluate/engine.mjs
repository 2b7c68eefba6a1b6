// The engines that evaluations draw from.

/** Engines by kind of ignition; each is drawn as often as the others of its kind. */
export const ENGINES = {
  distributor: ["generic.i4.1342.distributor", "generic.i6.153624.distributor"],
  pack: ["generic.i4.1342.pack", "generic.i6.153624.pack", "generic.v6.123456.pack"],
  rail: ["generic.i4.1342.rail", "generic.v6.123456.rail"],
  hybrid: ["generic.i4.1342.hybrid", "generic.v6.123456.hybrid"],
  "coil-per-plug": ["generic.i3.132.coil-per-plug", "generic.i4.1342.coil-per-plug"],
};
