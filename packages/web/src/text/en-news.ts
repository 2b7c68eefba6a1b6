// The words of what the page has to say by itself: of the device, of another tab, of a new version.

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

export const STORE = {
  failed:
    "This case could not be kept on the device: a reload would lose it. Save it as a file to be safe.",
  full: "The device is full, so this case could not be kept: a reload would lose it. Save it as a file, or delete other cases.",
  unreadable: "Earlier cases on this device could not be read.",
};
