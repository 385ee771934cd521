using Coilwright.Physics;
using Coilwright.Physics.BoundaryElements;

namespace Coilwright.Analysis.Forecasts;

/// <summary>The magnets' field over one pole.</summary>
/// <param name="Number">1 for the pole of its coil at the lowest x.</param>
/// <param name="Coil">Index of its coil.</param>
/// <param name="AtM">Where the sensor stands.</param>
/// <param name="FieldT">Vertical flux density there, T, with what permeabilities and cutting leave open.</param>
internal sealed record PoleAnswer(int Number, int Coil, Vector3M AtM, Estimate FieldT);

/// <summary>
/// What a gauss meter would read at a jig's distance over each pole's own top, from the same solution as everything else.
/// </summary>
internal sealed class PolesOver
{
    /// <summary>How well a spacer and the depth of the sensor in its probe are known, m: our assumption.</summary>
    public const double JigErrorM = 5e-5;

    private const double HigherM = 2e-4;

    private PolesOver(double jigM, IReadOnlyList<PoleAnswer> answers, double fieldPerM, double magnetSpread) =>
        (JigM, Answers, FieldPerM, MagnetSpread) = (jigM, answers, fieldPerM, magnetSpread);

    /// <summary>Distance over the top of each pole, m.</summary>
    public double JigM { get; }

    /// <summary>By coil, then by ascending x.</summary>
    public IReadOnlyList<PoleAnswer> Answers { get; }

    /// <summary>d ln field / d height over the strongest pole, 1/m; taken for all.</summary>
    public double FieldPerM { get; }

    /// <summary>Half-width of the magnets' strength over its value.</summary>
    public double MagnetSpread { get; }

    /// <summary>
    /// Half-width of what permeabilities and cutting leave open, over the value: the widest of the poles that read at least a tenth of the
    /// strongest.
    /// </summary>
    public double ModelSpread
    {
        get
        {
            double strongest = Answers.Max(one => Math.Abs(one.FieldT.Value));
            return Answers
                .Where(one => Math.Abs(one.FieldT.Value) >= strongest / 10)
                .Max(one => (one.FieldT.High - one.FieldT.Low) / 2 / Math.Abs(one.FieldT.Value));
        }
    }

    /// <summary>Reads the field over every pole; null without magnets or without poles.</summary>
    public static PolesOver? Compute(PickupModel model, FieldSolution field, double jigM)
    {
        bool magnets =
            model.Bars.Any(bar => bar.PolarisationT != default)
            || model.Coils.Any(coil => coil.Poles.Any(pole => Math.Abs(pole.PolarisationT.Value) > 0));
        List<PoleAnswer> answers = [];
        foreach ((int number, int coil, Vector3M at) in magnets ? Places(model, jigM) : [])
        {
            answers.Add(new PoleAnswer(number, coil, at, field.Map.MagnetVerticalT(at)));
        }

        PoleAnswer? strongest = answers.MaxBy(one => Math.Abs(one.FieldT.Value));
        if (strongest is null || !(Math.Abs(strongest.FieldT.Value) > 0))
        {
            return null;
        }

        double higher = field.Map.MagnetFluxDensityT(strongest.AtM with { ZM = strongest.AtM.ZM + HigherM }).ZM / strongest.FieldT.Value;
        return new PolesOver(jigM, answers, higher > 0 ? Math.Log(higher) / HigherM : 0, StringsOver.MagnetSpreadOf(model));
    }

    /// <summary>Vertical flux density over the pole that reads most, T; zero without poles.</summary>
    /// <param name="model">The pickup.</param>
    /// <param name="map">Its solved field.</param>
    /// <param name="jigM">Distance over the top of each pole, m.</param>
    public static double StrongestT(PickupModel model, FieldMap map, double jigM) =>
        Places(model, jigM).Select(place => map.MagnetFluxDensityT(place.At).ZM).DefaultIfEmpty(0).MaxBy(Math.Abs);

    /// <summary>Where the sensor stands over each pole: by coil, then by ascending x.</summary>
    private static IEnumerable<(int Number, int Coil, Vector3M At)> Places(PickupModel model, double jigM)
    {
        for (int c = 0; c < model.Coils.Count; c++)
        {
            CoilModel coil = model.Coils[c];
            IEnumerable<(double X, double Top)> poles = coil
                .Poles.SelectMany(pole => pole.PositionsM.Select((x, i) => (x, pole.TopsM[Math.Min(i, pole.TopsM.Count - 1)])))
                .OrderBy(pole => pole.x);
            foreach ((int index, (double x, double top)) in poles.Index())
            {
                yield return (index + 1, c, new Vector3M(coil.Position.XM + x, coil.Position.YM, coil.Position.ZM + top + jigM));
            }
        }
    }
}
