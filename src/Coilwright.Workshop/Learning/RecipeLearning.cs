using System.Globalization;
using Coilwright.Analysis.Learning;
using Coilwright.Physics;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Learning;

/// <summary>What a shop has learnt, as its forecasts take it in: a set, the lines that ended since, and the wire that is meant.</summary>
/// <param name="set">The set that holds.</param>
/// <param name="book">All that is on record, for the lines that ended.</param>
/// <param name="timeUtc">When the coil is wound: lines that ended by then hold no more.</param>
/// <param name="spool">The spool it is wound from, and its lot; empty when nobody named one.</param>
public sealed class RecipeLearning(LearntSet set, LearningBook book, DateTimeOffset timeUtc, (string Label, string Lot) spool)
    : IEquatable<RecipeLearning>
{
    /// <summary>The set.</summary>
    public LearntSet Set => set;

    /// <summary>What its forecasts are kept by.</summary>
    private string Key =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{set.Number} {set.TimeUtc.UtcTicks} {book.Endings.Count(one => one.TimeUtc <= timeUtc)} "
                + $"{spool.Label.ToUpperInvariant()} {spool.Lot}"
        );

    /// <summary>The same for the wire of a spool.</summary>
    public RecipeLearning On((string Label, string Lot) other) => new(set, book, timeUtc, other);

    /// <summary>What was learnt of one coil; null when nothing was.</summary>
    /// <param name="coil">The coil of the recipe.</param>
    /// <param name="wire">Its wire as modelled.</param>
    public LearntCoil? Of(RecipeCoil coil, WireModel wire)
    {
        LearningCoil keys = CoilKeys.Of(coil, wire, spool.Lot, spool.Label, winder: "", Endings);
        bool isNew = spool.Label.Length == 0 && !set.Resistance.Knows(LotOf(keys));
        keys = isNew ? keys with { Lot = LearningCoil.NotYetSeen, Spool = LearningCoil.NotYetSeen } : keys;
        Effect bobbin = new(EffectKind.Bobbin, keys.Bobbin),
            lot = LotOf(keys);
        int onBobbin = set.Resistance.CoilsOf(bobbin),
            ofLot = set.Resistance.CoilsOf(lot);
        bool knowsWire = set.Resistance.Knows(new Effect(EffectKind.Wire, keys.Wire));
        string source = string.Create(
            CultureInfo.InvariantCulture,
            $"{set.Words}, from {Coils(onBobbin)} on this bobbin{LotWords(keys, ofLot)}"
        );
        LearntFactor? ohm = onBobbin > 0 || knowsWire ? Factor(set.Resistance, keys.OfResistance, source) : null,
            measured = onBobbin > 0
                ? Factor(
                    set.Resistance,
                    [.. keys.OfResistance.Where(one => one.Effect.Kind is EffectKind.Shop or EffectKind.Bobbin or EffectKind.Winder)],
                    source
                )
                : null;
        int cores = set.Inductance.CoilsOf(bobbin);
        LearntFactor? henry =
            cores > 0
                ? Factor(
                    set.Inductance,
                    keys.OfInductance,
                    string.Create(CultureInfo.InvariantCulture, $"{set.Words}, from {Coils(cores)} on this bobbin")
                )
                : null;
        return ohm is null && measured is null && henry is null ? null : new LearntCoil(ohm, measured, henry);
    }

    /// <summary>The same set on the same wire, with the same lines ended.</summary>
    public bool Equals(RecipeLearning? other) => other is not null && Key == other.Key;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as RecipeLearning);

    /// <inheritdoc/>
    public override int GetHashCode() => Key.GetHashCode(StringComparison.Ordinal);

    /// <inheritdoc/>
    public override string ToString() => Key;

    private int Endings(EffectKind kind, string name) => book.EndingsOf(kind, name, timeUtc);

    private static Effect LotOf(LearningCoil keys) => new(EffectKind.Lot, $"{keys.Wire}|{keys.Lot}");

    private static string Coils(int count) => count == 1 ? "1 coil" : string.Create(CultureInfo.InvariantCulture, $"{count} coils");

    private static string LotWords(LearningCoil keys, int ofLot)
    {
        if (ofLot == 0)
        {
            return "; the wire's lot is not yet seen, so the spread between lots stays in";
        }

        string lot = keys.Lot.Length == 0 ? "without a named spool" : "of this lot";
        return $" and {Coils(ofLot)} {lot}";
    }

    private static LearntFactor Factor(LearntQuantity learnt, IReadOnlyList<EffectPrior> effects, string source)
    {
        LearntCorrection known = learnt.Correction(effects);
        return new LearntFactor(
            Math.Exp(known.Mean),
            known.Half,
            Math.Sqrt(Math.Max(0, known.NextHalf * known.NextHalf - known.Half * known.Half)),
            source
        );
    }
}
