package counter

// Signature is what a record begins with, so that its file can be told from any other.
const Signature = magic + " "
