namespace Coilwright.Analysis.Learning;

/// <summary>What tells coils apart that may read differently, by the shop's own names.</summary>
/// <param name="Bobbin">The bobbin, by its sizes.</param>
/// <param name="Core">What stands in it.</param>
/// <param name="Wire">The wire's specification.</param>
/// <param name="Lot">The lot of the wire; empty for coils whose spool nobody named: they count as one lot.</param>
/// <param name="Spool">The spool; empty when nobody named it.</param>
/// <param name="Winder">The winder; empty when nobody named it.</param>
public sealed record LearningCoil(string Bobbin, string Core, string Wire, string Lot, string Spool, string Winder)
{
    /// <summary>Lot and spool of wire that was not wound yet.</summary>
    public const string NotYetSeen = "\u0001";

    /// <summary>Standard deviation of the forecast resistance with its wire's own left out, a part of one.</summary>
    public double BobbinDoubt { get; init; } = 0.01;

    /// <summary>Standard deviation of the wire's ohms per metre, a part of one.</summary>
    public double WireDoubt { get; init; } = 0.03;

    /// <summary>Standard deviation of the forecast inductance, a part of one.</summary>
    public double InductanceDoubt { get; init; } = 0.03;

    /// <summary>What all of a shop's coils have in common, standard deviations of resistance and inductance. Our assumption.</summary>
    private const double ShopResistance = 0.004,
        ShopInductance = 0.008;

    /// <summary>Spools of one lot differ by so much, standard deviation. Our assumption.</summary>
    private const double SpoolDeviation = 0.004;

    /// <summary>A counter is off by so many turns of one, standard deviation; ±0.2 % [Practice].</summary>
    private const double CounterDeviation = 0.001;

    /// <summary>Least doubt of a bobbin: no drawing is better known. Our assumption.</summary>
    private const double LeastDoubt = 0.005;

    /// <summary>What the coil's DC resistance has in common with others'.</summary>
    public IReadOnlyList<EffectPrior> OfResistance =>
        [
            Prior(EffectKind.Shop, "", ShopResistance),
            Prior(EffectKind.Bobbin, Bobbin, Math.Max(LeastDoubt, BobbinDoubt)),
            Prior(EffectKind.Winder, Winder, CounterDeviation),
            .. OfWire,
        ];

    /// <summary>What the wire's ohms per metre have in common with others'; half of its doubt is the specification's.</summary>
    public IReadOnlyList<EffectPrior> OfWire =>
        [
            Prior(EffectKind.Wire, Wire, Math.Max(LeastDoubt, WireDoubt) / Math.Sqrt(2)),
            Prior(EffectKind.Lot, $"{Wire}|{Lot}", Math.Max(LeastDoubt, WireDoubt) / Math.Sqrt(2)),
            Prior(EffectKind.Spool, $"{Wire}|{Lot}|{Spool}", SpoolDeviation),
        ];

    /// <summary>What the coil's inductance has in common with others': half of its doubt is the bobbin's, half the core's.</summary>
    public IReadOnlyList<EffectPrior> OfInductance =>
        [
            Prior(EffectKind.Shop, "", ShopInductance),
            Prior(EffectKind.Bobbin, Bobbin, Math.Max(LeastDoubt, InductanceDoubt) / Math.Sqrt(2)),
            Prior(EffectKind.Core, $"{Bobbin}|{Core}", Math.Max(LeastDoubt, InductanceDoubt) / Math.Sqrt(2)),
            Prior(EffectKind.Winder, Winder, 2 * CounterDeviation),
        ];

    /// <summary>Kinds by which resistances are grouped to see whether a forecast is off.</summary>
    public static IReadOnlyList<EffectKind> ResistanceGroups { get; } = [EffectKind.Bobbin, EffectKind.Lot];

    /// <summary>Kinds by which inductances are.</summary>
    public static IReadOnlyList<EffectKind> InductanceGroups { get; } = [EffectKind.Core];

    private static EffectPrior Prior(EffectKind kind, string name, double deviation) => new(new Effect(kind, name), deviation * deviation);
}
