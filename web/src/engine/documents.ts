// What the page tells the engine once and then only names: conventions, a sheet, a puzzle.

import type { DocumentKind, DocumentName } from "./types";

/** A document in one of its states. In a request its name stands for it. */
export class EngineDocument implements DocumentName {
  readonly kind: DocumentKind;
  readonly handle: string;
  readonly revision: number;
  readonly content: string;

  constructor(kind: DocumentKind, handle: string, revision: number, content: string) {
    this.kind = kind;
    this.handle = handle;
    this.revision = revision;
    this.content = content;
  }

  /** How it stands in a request. */
  toJSON(): DocumentName {
    return { handle: this.handle, revision: this.revision };
  }
}

/** Gives the states of one document their revisions. The same content is the same document, also for who goes back to it. */
export class Shelf {
  readonly #kind: DocumentKind;
  readonly #handle: string;
  readonly #remembered: number;
  /** The last used stands last. */
  readonly #states = new Map<string, EngineDocument>();
  #last = 0;

  constructor(kind: DocumentKind, handle: string, remembered = 8) {
    this.#kind = kind;
    this.#handle = handle;
    this.#remembered = remembered;
  }

  /** The document with this content. */
  of(content: string): EngineDocument {
    let known = this.#states.get(content);
    if (known === undefined) {
      this.#last += 1;
      known = new EngineDocument(this.#kind, this.#handle, this.#last, content);
    }
    this.#states.delete(content);
    this.#states.set(content, known);
    for (const oldest of this.#states.keys()) {
      if (this.#states.size <= this.#remembered) break;
      this.#states.delete(oldest);
    }
    return known;
  }
}

/** The arguments of a request as text, and the documents that they name. */
export function written(args: unknown): { text: string; documents: readonly EngineDocument[] } {
  const documents = new Set<EngineDocument>();
  const text = JSON.stringify(args, function (this: Record<string, unknown>, key, value: unknown) {
    const whole = this[key];
    if (whole instanceof EngineDocument) documents.add(whole);
    return value;
  });
  return { text, documents: [...documents] };
}
