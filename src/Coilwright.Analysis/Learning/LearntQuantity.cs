using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Learning;

/// <summary>How far effects of a kind scatter.</summary>
/// <param name="Times">What their starting variance is multiplied by.</param>
/// <param name="Freedom">Degrees of freedom that this rests on.</param>
public sealed record KindSpread(double Times, double Freedom);

/// <summary>What was learnt of one quantity: enough to say what the next coil will read, of whatever it is made.</summary>
/// <param name="Cells">What was read, by what coils have in common.</param>
/// <param name="CoilVariance">Variance of good coils about their effects, of ln of measured over forecast.</param>
/// <param name="CoilFreedom">Degrees of freedom that it rests on.</param>
/// <param name="Kinds">Scatter of the kinds that the shop has said something of.</param>
public sealed record LearntQuantity(
    IReadOnlyList<LearningCell> Cells,
    double CoilVariance,
    double CoilFreedom,
    IReadOnlyDictionary<EffectKind, KindSpread> Kinds
)
{
    private readonly Lazy<NormalHierarchy> _hierarchy = new(() =>
        new NormalHierarchy(Cells, kind => Kinds.TryGetValue(kind, out KindSpread? spread) ? spread.Times : 1)
    );

    /// <summary>How many coils it rests on.</summary>
    public int Coils => Cells.Sum(cell => cell.Coils);

    /// <summary>True when something with this effect was read.</summary>
    public bool Knows(Effect effect) => _hierarchy.Value.Knows(effect);

    /// <summary>How many coils with this effect were read.</summary>
    public int CoilsOf(Effect effect) => Cells.Where(cell => cell.Effects.Any(one => one.Effect == effect)).Sum(cell => cell.Coils);

    /// <summary>The correction of a coil with these effects, and what the next one will read.</summary>
    /// <param name="effects">What the coil has in common with others; effects that were not seen keep their spread.</param>
    public LearntCorrection Correction(IReadOnlyList<EffectPrior> effects)
    {
        (double mean, double variance) = _hierarchy.Value.Sum(effects);
        double freedom = CoilFreedom;
        foreach (EffectPrior one in effects.Where(one => !Knows(one.Effect)))
        {
            freedom = Math.Min(freedom, Kinds.TryGetValue(one.Effect.Kind, out KindSpread? spread) ? spread.Freedom : freedom);
        }

        double next = variance + CoilVariance,
            nextFreedom = next * next / (variance * variance / freedom + CoilVariance * CoilVariance / CoilFreedom);
        return new LearntCorrection(mean, Half(variance, freedom), Half(next, nextFreedom));
    }

    private static double Half(double variance, double freedom) => StudentT.InvCDF(0, 1, freedom, 0.975) * Math.Sqrt(variance);
}

/// <summary>A correction of a forecast, in logarithms of measured over forecast.</summary>
/// <param name="Mean">ln of what the forecast is to be multiplied by.</param>
/// <param name="Half">Half-width of its own 95 % interval.</param>
/// <param name="NextHalf">Half-width of the 95 % interval of the next good coil.</param>
public sealed record LearntCorrection(double Mean, double Half, double NextHalf);
