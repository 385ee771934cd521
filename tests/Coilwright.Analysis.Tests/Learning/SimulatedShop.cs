using Coilwright.Analysis.Learning;
using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Tests.Learning;

/// <summary>A shop whose truth is known: bobbins, wires, lots and spools that are off by so much, and coils that scatter,
/// some of them bad; a shop's bobbins or lots differ by 0.4 to 1.7 times what is taken to hold before.</summary>
internal sealed class SimulatedShop
{
    private readonly Random _random;
    private readonly bool _isTrue;
    private readonly Dictionary<Effect, double> _truth = [];
    private readonly double _scatterOhm;
    private readonly double _scatterHenry;
    private readonly double _bad;
    private readonly Dictionary<EffectKind, double> _spread;

    /// <param name="seed">Another shop for each.</param>
    /// <param name="isTrue">True for a shop whose forecasts have no bias at all.</param>
    public SimulatedShop(int seed, bool isTrue)
    {
        (_random, _isTrue) = (new Random(seed), isTrue);
        _scatterOhm = 0.003 + 0.006 * _random.NextDouble();
        _scatterHenry = 0.006 + 0.01 * _random.NextDouble();
        _bad = 0.06 * _random.NextDouble();
        _spread = Enum.GetValues<EffectKind>().ToDictionary(kind => kind, _ => 0.4 + 1.3 * _random.NextDouble());
        int bobbins = 1 + _random.Next(4),
            wires = 1 + _random.Next(2);
        for (int batch = 0; batch < 2 + _random.Next(10); batch++)
        {
            int wire = _random.Next(wires),
                lot = _random.Next(3);
            LearningCoil made = new(
                "B" + _random.Next(bobbins),
                "C" + _random.Next(2),
                "W" + wire,
                "L" + lot,
                "S" + _random.Next(2),
                "M" + _random.Next(2)
            );
            for (int coil = 4 + _random.Next(37); coil > 0; coil--)
            {
                Coils.Add(made);
                Ohms.Add(new LearningReading(Read(made.OfResistance, _scatterOhm, good: false), made.OfResistance));
                Henries.Add(new LearningReading(Read(made.OfInductance, _scatterHenry, good: false), made.OfInductance));
            }
        }
    }

    public List<LearningCoil> Coils { get; } = [];

    public List<LearningReading> Ohms { get; } = [];

    public List<LearningReading> Henries { get; } = [];

    public LearntQuantity Resistance => HierarchicalFit.Fit(Ohms, [], LearningPriors.Resistance);

    public LearntQuantity Inductance => HierarchicalFit.Fit(Henries, [], LearningPriors.Inductance);

    /// <summary>How far coils of these effects lie from their forecast in truth.</summary>
    public double Truth(IReadOnlyList<EffectPrior> effects) =>
        _isTrue
            ? 0
            : effects.Sum(one =>
                _truth.TryGetValue(one.Effect, out double known)
                    ? known
                    : _truth[one.Effect] = Normal.Sample(_random, 0, _spread[one.Effect.Kind] * Math.Sqrt(one.Variance))
            );

    /// <summary>What a good coil reads next.</summary>
    public double NextOhm(IReadOnlyList<EffectPrior> effects) => Read(effects, _scatterOhm, good: true);

    /// <summary>The same of inductance.</summary>
    public double NextHenry(IReadOnlyList<EffectPrior> effects) => Read(effects, _scatterHenry, good: true);

    private double Read(IReadOnlyList<EffectPrior> effects, double scatter, bool good)
    {
        double off = Truth(effects) + Normal.Sample(_random, 0, scatter);
        return good || _random.NextDouble() >= _bad ? off : off - 0.4 * _random.NextDouble() + 0.08;
    }
}
