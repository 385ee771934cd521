namespace Coilwright.Physics.Electrostatics;

/// <summary>What the leads add across a pickup's two wires.</summary>
/// <remarks>
/// By energy: a conductor at a share v of the voltage counts with v² to the screen and with (v − w)² to another conductor at w. Figures per
/// metre and the usual length are from memory, chosen before any forecast was held against a published range.
/// </remarks>
public static class LeadCapacitance
{
    /// <summary>Length that a pickup's leads usually have, m. Common practice, no source.</summary>
    public static Estimate UsualLengthM { get; } = Between(0.2, 0.6);

    /// <summary>One conductor to its braid, F/m. From memory.</summary>
    public static Estimate BraidedFPerM { get; } = Between(150e-12, 350e-12);

    /// <summary>Each of two or four conductors to the screen, F/m. From memory.</summary>
    public static Estimate ScreenedFPerM { get; } = Between(80e-12, 150e-12);

    /// <summary>Two conductors beside each other in a screen, F/m. From memory.</summary>
    public static Estimate BesideFPerM { get; } = Between(30e-12, 90e-12);

    /// <summary>
    /// Two wires without a screen, F/m: π·ε0·ε/acosh(distance ÷ diameter) of wires of 0.6 mm in 1.4 mm of cloth or plastic, ε 1.1…3.
    /// </summary>
    public static Estimate PairFPerM { get; } = Between(20e-12, 60e-12);

    /// <summary>A recipe of one coil without grounded metal that names no leads: a pair, or at worst a thin screened lead, F/m.</summary>
    public static Estimate UnnamedFPerM { get; } = Between(20e-12, 150e-12);

    /// <summary>Any other recipe that names no leads: a screened lead of any kind, F/m.</summary>
    public static Estimate UnnamedScreenedFPerM { get; } = Between(80e-12, 350e-12);

    /// <summary>Two of four conductors lie beside each other in four of the six orders in which they can stand in a ring.</summary>
    private const double BesideInRing = 2.0 / 3;

    /// <summary>What the leads add across the pickup's wires, F.</summary>
    /// <param name="leads">The leads; null takes usual ones.</param>
    /// <param name="connection">How the coils are joined.</param>
    /// <param name="drops">Each coil's share of the voltage, in the order in which they are joined; they sum to 1 in series.</param>
    /// <param name="screened">Whether leads that are not named are taken as screened.</param>
    public static Estimate AtTerminals(LeadModel? leads, Connection connection, IReadOnlyList<double> drops, bool screened)
    {
        ArgumentNullException.ThrowIfNull(drops);
        if (leads is null)
        {
            return Product(UsualLengthM, screened ? UnnamedScreenedFPerM : UnnamedFPerM);
        }

        Estimate toScreen = Stated(
            leads.ToScreenFPerM,
            leads.Construction == LeadConstruction.SingleBraided ? BraidedFPerM : ScreenedFPerM
        );
        Estimate between = Stated(leads.BetweenFPerM, leads.Construction == LeadConstruction.UnscreenedPair ? PairFPerM : BesideFPerM);
        (double screenWeight, double betweenWeight) = leads.Construction switch
        {
            LeadConstruction.SingleBraided => (1, 0),
            LeadConstruction.TwoConductorScreened => (1, 1),
            LeadConstruction.UnscreenedPair => (0, 1),
            _ => FourConductors(connection, drops),
        };
        return Product(Stated(leads.LengthM, UsualLengthM), Sum(Scaled(toScreen, screenWeight), Scaled(between, betweenWeight)));
    }

    /// <summary>Weights of four conductors: the coils' link, or the second coil's ends, run beside the two wires.</summary>
    private static (double Screen, double Between) FourConductors(Connection connection, IReadOnlyList<double> drops)
    {
        double link = connection == Connection.Series && drops.Count > 1 ? drops[0] : 0;
        double[] volts = connection == Connection.Parallel ? [1, 1, 0, 0] : [1, link, link, 0];
        double pairs = 0;
        for (int i = 0; i < volts.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                pairs += BesideInRing * (volts[i] - volts[j]) * (volts[i] - volts[j]);
            }
        }

        return (volts.Sum(volt => volt * volt), pairs);
    }

    private static Estimate Between(double low, double high) => new(Math.Sqrt(low * high), low, high, Basis.Assumed);

    private static Estimate Stated(double? stated, Estimate usual) => stated is { } value ? Estimate.Exact(value) : usual;

    private static Estimate Scaled(Estimate estimate, double factor) =>
        factor > 0 ? new(estimate.Value * factor, estimate.Low * factor, estimate.High * factor, estimate.Basis) : Estimate.Exact(0);

    /// <summary>Two figures of one lead: thick or thin insulation moves both alike.</summary>
    private static Estimate Sum(Estimate a, Estimate b) => new(a.Value + b.Value, a.Low + b.Low, a.High + b.High, Worse(a, b));

    /// <summary>Independent factors: the half-widths of their logarithms add in quadrature.</summary>
    private static Estimate Product(Estimate a, Estimate b)
    {
        double half = Math.Sqrt(Math.Pow(HalfLog(a), 2) + Math.Pow(HalfLog(b), 2)),
            value = a.Value * b.Value;
        return new(value, value * Math.Exp(-half), value * Math.Exp(half), Worse(a, b));
    }

    private static Basis Worse(Estimate a, Estimate b) =>
        a.Basis == Basis.Assumed || b.Basis == Basis.Assumed ? Basis.Assumed : Basis.Measured;

    private static double HalfLog(Estimate estimate) => estimate.IsExact ? 0 : Math.Log(estimate.High / estimate.Low) / 2;
}
