namespace Coilwright.Workshop.Batches.Events;

/// <summary>A spool was put on, and it was decided to hold turns or ohms.</summary>
public sealed record SpoolTaken : WinderEvent
{
    /// <summary>Label of the spool.</summary>
    public required string Spool { get; init; }

    /// <summary>"hold-turns" or "hold-ohms".</summary>
    public required string Choice { get; init; }

    /// <summary>Turns to wind from now on; null for the recipe's.</summary>
    public double? Turns { get; init; }

    public override string Sentence
    {
        get
        {
            string turns = Turns is { } count ? $", {Count(count)} turns" : "";
            return $"spool {Spool}, {Choice.Replace('-', ' ')}{turns}";
        }
    }

    internal override bool IsSaidBy(BatchEventEntry said) => base.IsSaidBy(said) && Spool == said.Spool.Trim() && Choice == said.Choice;
}
