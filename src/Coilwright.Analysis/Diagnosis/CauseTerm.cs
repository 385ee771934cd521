namespace Coilwright.Analysis.Diagnosis;

/// <summary>Mean and standard deviation of a logarithm.</summary>
internal readonly record struct LogSpread(double Mean, double Deviation)
{
    /// <summary>The same mean with a second deviation added to the first.</summary>
    public LogSpread And(double deviation) => new(Mean, Root(Deviation, deviation));

    /// <summary>Two independent deviations together.</summary>
    public static double Root(double a, double b) => Math.Sqrt(a * a + b * b);
}

/// <summary>One size of one cause: how it moves the readings, in natural logarithms of read over wanted.</summary>
internal sealed record CauseTerm
{
    /// <summary>What one coil scatters from the next when nothing is wrong. Our assumptions, no source.</summary>
    public const double OhmScatter = 0.005,
        HenryScatter = 0.008,
        QualityScatter = 0.025;

    /// <summary>Key of the cause, given by the table.</summary>
    public string Cause { get; init; } = "";

    /// <summary>Share of this size among those of its cause; by the table turned into a prior probability.</summary>
    public required double Weight { get; init; }

    /// <summary>How big: part of the turns, kelvin, gauge steps, or ohms over wanted ohms.</summary>
    public double Size { get; init; }

    /// <summary>ln R/R₀.</summary>
    public LogSpread Ohm { get; init; } = new(0, OhmScatter);

    /// <summary>ln L/L₀.</summary>
    public LogSpread Henry { get; init; } = new(0, HenryScatter);

    /// <summary>ln Q/Q₀.</summary>
    public LogSpread Quality { get; init; } = new(0, QualityScatter);

    /// <summary>ln of counted over wanted turns.</summary>
    public LogSpread Turns { get; init; } = new(0, 0.001);

    /// <summary>ln R/R₀ when read once more, cold, on a second meter; as <see cref="Ohm"/> unless said.</summary>
    public LogSpread? Again { get; init; }

    /// <summary>ln of true over wanted turns.</summary>
    public double TrueTurns { get; init; }

    /// <summary>ln of the spool's ohms per metre over the wire table's.</summary>
    public LogSpread Wire { get; init; } = new(0, 0.006);

    /// <summary>False where the coil's own wire has no say in what the meter shows.</summary>
    public bool FollowsBatch { get; init; } = true;

    /// <summary>Only the resistance moves; Q goes down by as much as the direct-current part of the loss goes up.</summary>
    public static CauseTerm OfOhms(double weight, double size, LogSpread ohm, CoilEvidence evidence)
    {
        double share = 1 / evidence.AcOverDc;
        return new CauseTerm
        {
            Weight = weight,
            Size = size,
            Ohm = ohm,
            Quality = new LogSpread(-Math.Log(1 + share * (Math.Exp(ohm.Mean) - 1)), LogSpread.Root(QualityScatter, share * ohm.Deviation)),
        };
    }
}
