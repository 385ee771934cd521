using Coilwright.Physics.Strings;
using Coilwright.Shared;

namespace Coilwright.Physics.Tests.Strings;

/// <summary>A plucked string against the shape that it is let go from, and what two points hear of it.</summary>
public sealed class PluckedStringTests
{
    private static readonly PluckedString s_open = new()
    {
        FundamentalHz = 110,
        LengthM = 0.648,
        PluckM = 0.13,
    };

    [Theory]
    [InlineData(0.13, 1)]
    [InlineData(0.05, 7)]
    [InlineData(0.324, 2)]
    [InlineData(0.324, 5)]
    public void A_partial_is_the_projection_of_the_triangle_on_its_sine(double pluckM, int n)
    {
        PluckedString plucked = s_open with { PluckM = pluckM };
        double lift = plucked.LiftM,
            length = plucked.LengthM;
        double Triangle(double x) => x < pluckM ? lift * x / pluckM : lift * (length - x) / (length - pluckM);
        const int Steps = 200_000;
        double sum = 0;
        for (int i = 0; i < Steps; i++)
        {
            double x = (i + 0.5) * length / Steps;
            sum += Triangle(x) * Math.Sin(n * Math.PI * x / length);
        }

        Assert.Equal(2 * sum / Steps, plucked.DisplacementM(n), 1e-9 * lift);
    }

    [Fact]
    public void All_partials_together_are_the_triangle()
    {
        Evidence check = Evidence.Outside(
            "plucked string: sum of its partials over its length",
            "the triangle that it is let go from [StringSeries]",
            "read",
            "method: partials up to 4,000 are summed, which leaves 2·lift/(π²·p(1 − p)·4,000) at the most",
            ""
        );
        double p = s_open.PluckM / s_open.LengthM,
            left = 2 / (Math.PI * Math.PI * p * (1 - p) * 4000);
        for (int i = 1; i < 20; i++)
        {
            double x = i * s_open.LengthM / 20,
                sum = Enumerable.Range(1, 4000).Sum(n => s_open.DisplacementM(n) * Math.Sin(s_open.RadPerM(n) * x));
            double wanted = x < s_open.PluckM ? x / s_open.PluckM : (s_open.LengthM - x) / (s_open.LengthM - s_open.PluckM);
            check.Within(sum / s_open.LiftM, wanted, left, at: FormattableString.Invariant($"{x * 1e3:0} mm"));
        }

        check.Record();
    }

    [Fact]
    public void A_stiff_strings_partials_lie_as_far_above_its_harmonics_as_the_beam_term_says()
    {
        // T·k² + E·I·k⁴ = µ·ω² with k = nπ/L: the same string by its own equation of motion.
        const double Tension = 80,
            Diameter = 0.4e-3,
            Young = 200e9;
        double inertia = Math.PI * Math.Pow(Diameter, 4) / 64;
        PluckedString stiff = s_open with { Inharmonicity = PluckedString.InharmonicityOf(Diameter, Tension, s_open.LengthM) };
        double mass = Tension / Math.Pow(2 * s_open.LengthM * s_open.FundamentalHz, 2);
        foreach (int n in (int[])[1, 2, 10, 40])
        {
            double k = n * Math.PI / s_open.LengthM,
                omega = Math.Sqrt((Tension * k * k + Young * inertia * Math.Pow(k, 4)) / mass);
            Assert.Equal(omega / (2 * Math.PI), stiff.FrequencyHz(n), 1e-9 * omega);
        }
    }

    [Fact]
    public void A_partial_that_dies_away_starts_at_rest_and_swings_as_its_equation_says()
    {
        StringPartial partial = new(3, 330, 40, 1e-3);
        double omega = 2 * Math.PI * partial.FrequencyHz;
        double At(double t) =>
            partial.DisplacementM
            * Math.Exp(-partial.DecayPerS * t)
            * (Math.Cos(omega * t) + partial.DecayPerS / omega * Math.Sin(omega * t));
        foreach (double t in (double[])[0, 0.0007, 0.002, 0.011])
        {
            const double Step = 1e-7;
            double slope = (At(t + Step) - At(t - Step)) / (2 * Step),
                said = partial.VelocityMPerS * Math.Exp(-partial.DecayPerS * t) * Math.Sin(omega * t);
            Assert.Equal(slope, said, 1e-5 * Math.Abs(partial.VelocityMPerS));
        }
    }

    [Fact]
    public void Two_points_18_mm_apart_do_not_hear_an_open_A_string_near_4_kHz()
    {
        StringAperture two = StringAperture.OfPoints((-0.009, 1), (0.009, 1));
        Notches notches = Notches.Of(s_open, two, 0.1, 20_000);
        // half a wave between them: f = c/(2·18 mm) = 2·L·f₀/36 mm
        double half = 2 * s_open.LengthM * s_open.FundamentalHz / 0.036;
        Evidence
            .Outside(
                "first frequency that two points 18 mm apart do not hear of an open A string",
                "half a wave between them, c = 2·L·f₀",
                "derived",
                "method: the dip is found between steps of 1/50 partial"
            )
            .Within(notches.ByApertureHz[0], half, 1, "Hz")
            .Record();
        Assert.InRange(notches.ByApertureHz[0], 3800, 4200);
        Assert.Equal(3 * half, notches.ByApertureHz[1], 3.0);
        Assert.Equal(2 * s_open.LengthM * s_open.FundamentalHz / 0.2, notches.ByPlaceHz[0], 1e-9);
    }

    [Fact]
    public void A_string_is_not_heard_at_its_node_and_loudest_at_its_belly()
    {
        StringAperture point = StringAperture.OfPoints((0, 2));
        Assert.Equal(0, point.Heard(s_open.RadPerM(4), s_open.LengthM / 4), 1e-12);
        Assert.Equal(2, point.Heard(s_open.RadPerM(1), s_open.LengthM / 2), 1e-12);
        Assert.Equal(2, point.SensitivityVoltSPerM);
        Assert.Throws<ArgumentOutOfRangeException>(() => (s_open with { PluckM = 0.7 }).Partials(20_000));
        Assert.All(s_open.Partials(20_000), partial => Assert.InRange(partial.FrequencyHz, 1, 20_000));
    }
}
