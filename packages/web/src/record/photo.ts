// A photo from the camera, made small enough to keep.

/** Longest side in pixels: a plug fills a screen at this size. */
const LONGEST = 1280;
const QUALITY = 0.8;

/** Width and height that fit, never larger than they are. */
export function fitted(width: number, height: number): readonly [number, number] {
  const scale = Math.min(1, LONGEST / Math.max(width, height));
  return [Math.max(1, Math.round(width * scale)), Math.max(1, Math.round(height * scale))];
}

/**
 * A photo as a small JPEG, without what a camera writes beside the picture, such as the place. Rejects when
 * the file is no picture that this browser reads.
 */
export async function smallPhoto(file: Blob): Promise<Blob> {
  const picture = await createImageBitmap(file);
  const [width, height] = fitted(picture.width, picture.height);
  const canvas = document.createElement("canvas");
  canvas.width = width;
  canvas.height = height;
  canvas.getContext("2d")?.drawImage(picture, 0, 0, width, height);
  picture.close();
  return new Promise((resolve, reject) => {
    canvas.toBlob(
      (photo) => (photo ? resolve(photo) : reject(new Error("No picture came out."))),
      "image/jpeg",
      QUALITY,
    );
  });
}

/** A photo as an address that an `img` takes; the page's policy allows no `blob:`. */
export function addressOf(photo: Blob): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result));
    reader.onerror = () => reject(reader.error ?? new Error("The photo could not be read."));
    reader.readAsDataURL(photo);
  });
}
