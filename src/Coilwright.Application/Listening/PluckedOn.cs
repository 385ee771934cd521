using Coilwright.Formats.Listening;
using Coilwright.Physics;
using Coilwright.Physics.Strings;
using Coilwright.Workshop.Entry;

namespace Coilwright.Application.Listening;

/// <summary>A string of an instrument with a pluck on it: what was said of it, and what is usual for the rest.</summary>
internal sealed class PluckedOn
{
    /// <summary>Usual values where nothing says otherwise; common practice, no source, but for the lift, which is assumed.</summary>
    private const double UsualPluckM = 0.12,
        UsualPlaceM = 0.045,
        UsualSpacingM = 0.0104,
        UsualPitchHz = 110,
        LiftM = 1e-3;

    private const int UsualCount = 6;

    private readonly List<PlayedQuantity> _played = [];
    private readonly List<Problem> _problems = [];

    private PluckedOn(PickupModel? model, PluckQuestion asked)
    {
        StringSetModel? set = model?.Strings;
        int count = CountOf(model);
        double spacing = set?.SpacingM ?? UsualSpacingM;
        IReadOnlyList<double> tuning = UsualStrings.TuningHz(count, spacing);
        Number = NumberOf(asked, count, tuning);
        int index = Math.Clamp(Number, 1, count) - 1;
        double open = tuning[index],
            pitch = Take("pitch", asked.PitchHz, open, "Hz"),
            scale = Take("scaleLength", Known(set?.ScaleLengthM), UsualStrings.ScaleLengthM(spacing), "m"),
            length = scale * Math.Min(1, open / pitch),
            core = set?.Strings[index].CoreDiameterM ?? UsualStrings.For(count, spacing)[index].CoreM;
        FromBridgeM = Take("fromBridge", Known(set?.FromBridgeM), Math.Min(UsualPlaceM, length / 4), "m");
        StringModel steel = set?.Strings[index] ?? Usual(count, spacing, index);
        double tension = StringMotion.TensionN(steel, scale, Math.Min(open, pitch));
        Plucked = new PluckedString
        {
            FundamentalHz = pitch,
            LengthM = length,
            PluckM = Take("pluck", asked.PluckM, Math.Min(UsualPluckM, 0.3 * length), "m"),
            WidthM = Take("pluckWidth", asked.WidthM, 0, "m"),
            LiftM = Take("lift", null, LiftM, "m"),
            Inharmonicity = PluckedString.InharmonicityOf(core, tension, length),
        };
        _played.Add(new PlayedQuantity("length", Estimate.Exact(length, Basis.Forecast), "m"));
        _played.Add(new PlayedQuantity("inharmonicity", Estimate.Exact(Plucked.Inharmonicity, Basis.Forecast), "1"));
        Check(count);
    }

    /// <summary>The string and its pluck.</summary>
    public PluckedString Plucked { get; }

    /// <summary>Its number, 1 at the lowest x.</summary>
    public int Number { get; }

    /// <summary>Place of the pickup's middle from the bridge, m.</summary>
    public double FromBridgeM { get; }

    /// <summary>All of it with where it comes from.</summary>
    public IReadOnlyList<PlayedQuantity> Played => _played;

    /// <summary>The string, or everything that cannot be.</summary>
    /// <param name="model">The recipe's pickup; null where only a circuit is known.</param>
    /// <param name="asked">What was said.</param>
    public static ReadOutcome<PluckedOn> Of(PickupModel? model, PluckQuestion asked)
    {
        PluckedOn made = new(model, asked);
        return new ReadOutcome<PluckedOn>(made._problems.Count == 0 ? made : null, made._problems);
    }

    /// <summary>Number of strings over a pickup; a usual one where nothing says it.</summary>
    public static int CountOf(PickupModel? model) => model?.Strings?.Count ?? UsualCount;

    /// <summary>The one asked for; otherwise the one whose open pitch is nearest.</summary>
    private int NumberOf(PluckQuestion asked, int count, IReadOnlyList<double> tuning)
    {
        double wanted = asked.PitchHz ?? UsualPitchHz;
        int nearest = 1 + Enumerable.Range(0, count).MinBy(i => Math.Abs(Math.Log(tuning[i] / wanted)));
        return asked.StringNumber ?? nearest;
    }

    private static StringModel Usual(int count, double spacing, int index)
    {
        (double outer, double core) = UsualStrings.For(count, spacing)[index];
        return new StringModel
        {
            CoreDiameterM = core,
            OuterDiameterM = outer,
            RelativePermeability = Estimate.Exact(100, Basis.Assumed), // the mass alone is asked
        };
    }

    private static double? Known(double? value) => value > 0 ? value : null;

    private double Take(string key, double? said, double usual, string unit)
    {
        double value = said ?? usual;
        _played.Add(new PlayedQuantity(key, Estimate.Exact(value, said is null ? Basis.Assumed : Basis.Measured), unit));
        return value;
    }

    private void Check(int count)
    {
        if (Number < 1 || Number > count)
        {
            _problems.Add(new Problem("string", "there is no such string", $"{Number}", $"1 to {count}, 1 at the lowest x"));
        }

        string within = $"above 0, below the sounding length of {QuantityParser.Format(Plucked.LengthM, QuantityKind.Length)}";
        if (FromBridgeM >= Plucked.LengthM)
        {
            _problems.Add(new Problem("pitch", "stopped so high, the string ends before it reaches the pickup", Allowed: "a lower pitch"));
        }

        if (Plucked.PluckM <= 0 || Plucked.PluckM >= Plucked.LengthM)
        {
            string place = QuantityParser.Format(Plucked.PluckM, QuantityKind.Length);
            _problems.Add(new Problem("pluck", "the pluck lies beside the string", place, within));
        }
    }
}
