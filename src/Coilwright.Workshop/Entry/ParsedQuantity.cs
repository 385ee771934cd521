namespace Coilwright.Workshop.Entry;

/// <summary>How a typed quantity was understood.</summary>
/// <param name="Entered">The value, or <see cref="Entered.Unknown"/>.</param>
/// <param name="Why">Why it was not understood; empty when it was.</param>
public sealed record ParsedQuantity(Entered Entered, string Why)
{
    /// <summary>What it can mean when the person must say which; each is read as itself. Empty otherwise.</summary>
    public IReadOnlyList<string> Readings { get; init; } = [];

    /// <summary>
    /// The same in plain digits with a point, as a file of ours holds it: "6.21 kΩ" for "6,21 kΩ"; empty when it was not understood.
    /// </summary>
    public string Plain { get; init; } = "";

    /// <summary>What is allowed, where it is not the field's range: what may stand behind a ±; null otherwise.</summary>
    public string? Allowed { get; init; }

    /// <summary>
    /// Said beside the value when the separator was taken as one of thousands because nothing else was possible; empty otherwise.
    /// </summary>
    public string Note { get; init; } = "";
}
