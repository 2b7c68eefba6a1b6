// The words of what has happened meanwhile: in another tab, or to the page itself.

export const NEWS = {
  joined: "This case was changed in another tab too. Both changes are kept here.",
  clash:
    "This case was changed in another tab too. Both changes are kept; where both answered, the last answer holds. Look again at:",
  deleted:
    "This case was deleted in another tab. It is still here: your next answer puts it back on the device.",
  seen: "Seen",
  version: "A new version of this page is there.",
  reload: "Load it",
};
