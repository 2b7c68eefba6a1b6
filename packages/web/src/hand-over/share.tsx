// The ways to hand a case on: as a link to copy or to send, and as a square of dots for a phone's camera.
import type { CaseDocument } from "@half-order/core/wire";
import type { VNode } from "preact";
import { useEffect, useState } from "preact/hooks";
import { LINK } from "../text/en-hand-over.ts";
import { type CaseLink, linkOf } from "./link.ts";
import { type QrDrawing, qrOf } from "./qr.ts";
import { bytesOf, QR_MOST_BYTES } from "./square.ts";

/** Where a link to a case stands: nowhere yet, written, or it could not be written. */
export type LinkState =
  | { readonly state: "packing" }
  | { readonly state: "failed" }
  | ({ readonly state: "written" } & CaseLink);

/** The address that opens this case on another device; anew whenever the case changes. */
export function useCaseLink(doc: CaseDocument | undefined): LinkState {
  const [link, setLink] = useState<LinkState>({ state: "packing" });
  useEffect(() => {
    if (!doc) return undefined;
    let isWanted = true;
    const take = (next: LinkState): void => {
      if (isWanted) setLink(next);
    };
    linkOf(location.href.replace(/#.*$/, ""), doc).then(
      (written) => take({ state: "written", ...written }),
      () => take({ state: "failed" }),
    );
    return () => {
      isWanted = false;
    };
  }, [doc]);
  return link;
}

export function Share({ link }: { link: LinkState }): VNode {
  return (
    <section class="share" aria-label={LINK.title}>
      <h2>{LINK.title}</h2>
      <p class="help">{LINK.help}</p>
      {link.state === "packing" && <p>{LINK.packing}</p>}
      {link.state === "failed" && <p role="alert">{LINK.failed}</p>}
      {link.state === "written" && <Ways key={link.address} address={link.address} />}
    </section>
  );
}

function Ways({ address }: { address: string }): VNode {
  const [news, setNews] = useState("");
  const [isBare, setBare] = useState(false);
  const copy = async (): Promise<void> => {
    const isCopied = await copied(address);
    setNews(isCopied ? LINK.copied : "");
    setBare(!isCopied);
  };
  const send = (): void => {
    navigator.share({ title: LINK.shareTitle, url: address }).catch((error: unknown) => {
      // Closing the choice of ways is no failure.
      if (!(error instanceof DOMException && error.name === "AbortError")) setNews(LINK.notShared);
    });
  };
  return (
    <>
      <div class="share-ways">
        <button type="button" class="option is-finish" onClick={() => void copy()}>
          {LINK.copy}
        </button>
        {"share" in navigator && (
          <button type="button" class="option" onClick={send}>
            {LINK.share}
          </button>
        )}
      </div>
      <p class="fine" role="status">
        {news || LINK.size(address.length.toLocaleString())}
      </p>
      {isBare && (
        <label class="field">
          {LINK.notCopied}
          <input readOnly value={address} onFocus={(event) => event.currentTarget.select()} />
        </label>
      )}
    </>
  );
}

/** False when the browser refuses, or has no clipboard: pages without a secure address have none. */
async function copied(text: string): Promise<boolean> {
  if (!navigator.clipboard) return false;
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}

/** The link as a square of dots, or why there is none. */
export function QrSquare({ link, caption }: { link: LinkState; caption: string }): VNode | null {
  if (link.state !== "written") return null;
  const drawing = qrOf(link.square);
  if (!drawing) {
    const bytes = bytesOf(link.square).toLocaleString();
    return <p class="qr-refused">{LINK.tooLong(bytes, QR_MOST_BYTES.toLocaleString())}</p>;
  }
  const isLean = link.square !== link.address;
  return <Dots of={drawing} caption={isLean ? `${caption} ${LINK.lean}` : caption} />;
}

function Dots({ of: { size, path }, caption }: { of: QrDrawing; caption: string }): VNode {
  return (
    <figure class="qr">
      <svg viewBox={`0 0 ${size} ${size}`} role="img" aria-label={LINK.qrWords}>
        <path class="qr-ground" d={`M0 0H${size}V${size}H0Z`} />
        <path class="qr-dots" d={path} />
      </svg>
      <figcaption>{caption}</figcaption>
    </figure>
  );
}
