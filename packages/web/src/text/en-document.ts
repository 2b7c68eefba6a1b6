// The words that the document says by itself, when no script can.

export const DOCUMENT = {
  lost: "Not all of this page has come: the reception is too weak. What you tap opens once you reload.",
};
