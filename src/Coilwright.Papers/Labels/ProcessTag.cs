namespace Coilwright.Papers.Labels;

/// <summary>A tag that hangs on a basket or stands on a pot, twice as high as a piece's label.</summary>
/// <param name="Code">What the QR code says: the id. ASCII, 1 to 40 signs.</param>
/// <param name="Kind">What it hangs on, for example "Basket, wax".</param>
/// <param name="Title">What the shop calls it.</param>
/// <param name="Key">The one thing to be read first, with its value.</param>
/// <param name="Facts">The rest, in order.</param>
/// <param name="Caution">What to warn of.</param>
public sealed record ProcessTag(
    string Code,
    string Kind,
    string Title,
    (string Term, string Meaning) Key,
    IReadOnlyList<(string Term, string Meaning)> Facts,
    string Caution
);
