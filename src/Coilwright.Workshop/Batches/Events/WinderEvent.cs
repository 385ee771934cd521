namespace Coilwright.Workshop.Batches.Events;

/// <summary>What happened at a winder.</summary>
public abstract record WinderEvent : BatchEvent
{
    /// <summary>Name of the winder.</summary>
    public string Machine { get; init; } = "";
    public string Note { get; init; } = "";

    internal override bool IsSaidBy(BatchEventEntry said) =>
        Note == said.Note.Trim()
        && (
            said.Machine.Trim().Length == 0
            || Tag.Length > 0
            || string.Equals(Machine, said.Machine.Trim(), StringComparison.OrdinalIgnoreCase)
        );
}
