/** What the core needs of its host, and all it may use of it. */
declare const crypto: { randomUUID(): string }
