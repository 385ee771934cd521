namespace Coilwright.Workshop.Steps;

/// <summary>A mix of ink as it was made. Never edited.</summary>
public sealed record InkMixRecord
{
    /// <summary>Client-made id.</summary>
    public required Guid Id { get; init; }

    /// <summary>What stands on the pot; one of a kind.</summary>
    public required string Label { get; init; }

    /// <summary>Lots of the parts.</summary>
    public required string Lots { get; init; }

    /// <summary>From the sheet: how long it may be used, s.</summary>
    public required double PotLifeS { get; init; }

    /// <summary>From the sheet: when a print is fully hard, s.</summary>
    public required double FullCureS { get; init; }

    /// <summary>Temperature that the sheet's times stand for, °C.</summary>
    public required double SheetC { get; init; }

    /// <summary>True when the rate was counted as doubled for every 10 °C.</summary>
    public required bool DoublesPer10C { get; init; }

    /// <summary>The room, °C.</summary>
    public required double RoomC { get; init; }
    public string Person { get; init; } = "";
    public required DateTimeOffset TimeUtc { get; init; }

    /// <summary>The mix with its clocks.</summary>
    public InkMix ToMix() =>
        new(
            Label,
            Lots,
            TimeUtc,
            new CureRule(DoublesPer10C, SheetC),
            TimeSpan.FromSeconds(PotLifeS),
            TimeSpan.FromSeconds(FullCureS),
            RoomC
        );
}
