namespace Coilwright.Analysis.Diagnosis;

/// <summary>One cause that is known of: what it is called, how often it is taken to happen, and what to do about it.</summary>
public sealed record CauseEntry
{
    /// <summary>Its name in the file formats.</summary>
    public required string Key { get; init; }

    /// <summary>Its name for a person.</summary>
    public required string Label { get; init; }

    /// <summary>
    /// Part of all coils that have it before a shop has said otherwise. Our assumption, no source: any fault is as frequent as any other.
    /// </summary>
    public required double Rate { get; init; }

    /// <summary>The quickest check of it. Common practice, no source.</summary>
    public required string Check { get; init; }

    /// <summary>The reading that shows it best: a quantity of <see cref="NextReading"/>; empty where none does.</summary>
    public string Reading { get; init; } = "";

    /// <summary>True where it is a fault of the reading and of no coil: what was read is read again before a coil is blamed.</summary>
    public bool IsOfReading { get; init; }

    /// <summary>True where it moves the ohms and leaves the inductance as it is.</summary>
    public bool MovesOhmsAlone { get; init; }

    /// <summary>True where a person may say that it was this in the end.</summary>
    public bool CanBeConfirmed { get; init; } = true;

    /// <summary>How it moves the readings, size by size; weights sum to one, or none where this coil cannot have it.</summary>
    internal Func<CoilEvidence, IEnumerable<CauseTerm>> Terms { get; init; } = _ => [];

    /// <summary>Its rate for a coil, where that depends on what is known of it; else <see cref="Rate"/>.</summary>
    internal Func<CoilEvidence, double>? RateFor { get; init; }

    /// <summary>How big it is, in words that stand by themselves: of size, ln of the ohms it adds, and the coil.</summary>
    internal Func<double, double, CoilEvidence, string> Detail { get; init; } = (_, _, _) => "";
}
