using Coilwright.Physics.BoundaryElements;
using Coilwright.Physics.Strings;
using Coilwright.Physics.Tests.BoundaryElements;

namespace Coilwright.Physics.Tests.Strings;

public sealed class StringMotionTests
{
    // exp(−z/ℓ) swung by A gives the modified Bessel functions: I1(0.4) = 0.2040268, I2 = 0.0202680, I3 = 0.0013467 (tables, from memory)
    [Fact]
    public void Overtones_of_an_exponential_are_Bessel_functions()
    {
        double[] harmonics = StringMotion.Harmonics(z => Math.Exp(-z / 0.0025), 0.001);
        Assert.Equal(2 * 0.0202680 / 0.2040268, harmonics[0], 1e-5);
        Assert.Equal(3 * 0.0013467 / 0.2040268, harmonics[1], 1e-5);
    }

    [Fact]
    public void A_straight_linkage_has_no_overtones() =>
        Assert.All(StringMotion.Harmonics(z => 1 - 3 * z, 0.001), one => Assert.True(one < 1e-12));

    [Theory] // the exact frequency of a string with a spring k at p solves sin κL = −k/(Tκ)·sin κp·sin κ(L − p)
    [InlineData(0.045, 10)]
    [InlineData(0.160, 10)]
    [InlineData(0.324, 20)]
    public void Pitch_shift_is_that_of_a_string_with_a_spring(double fromBridge, double gradient)
    {
        const double Scale = 0.648,
            Tension = 72;
        double low = 0.9 * Math.PI / Scale,
            high = 1.05 * Math.PI / Scale;
        double Misfit(double k) =>
            Math.Sin(k * Scale) - gradient / (Tension * k) * Math.Sin(k * fromBridge) * Math.Sin(k * (Scale - fromBridge));
        for (int step = 0; step < 80; step++)
        {
            double middle = (low + high) / 2;
            (low, high) = Misfit(middle) > 0 ? (middle, high) : (low, middle);
        }

        double exact = low * Scale / Math.PI - 1;
        Assert.True(exact < 0);
        Assert.Equal(exact, StringMotion.PitchShift(gradient, Tension, Scale, fromBridge), 0.02 * Math.Abs(exact));
    }

    [Theory] // strings of a usual set are pulled by 60 to 90 N on a 648 mm scale, common practice
    [InlineData(0.010, 0.010, 329.63)]
    [InlineData(0.017, 0.017, 196.0)]
    [InlineData(0.046, 0.018, 82.41)]
    public void Tension_of_a_usual_string_is_what_it_is_known_to_be(double outerInch, double coreInch, double hz)
    {
        StringModel model = new()
        {
            OuterDiameterM = outerInch * 0.0254,
            CoreDiameterM = coreInch * 0.0254,
            RelativePermeability = Estimate.Exact(80),
        };
        Assert.InRange(StringMotion.TensionN(model, 0.648, hz), 60, 90);
    }

    // Plausibility alone, no evidence: it runs from silence over the very middle of a pole to loud beside it, so that nearly any model
    // passes through
    // the −18 to −14 dB which were recalled from one measurement (from memory; the string's place over the pole not known).
    [Fact]
    public void Sideways_motion_is_heard_less_than_motion_towards_the_pickup()
    {
        PoleModel rods = FieldCases.Rods(FieldCases.SixM, 4.5) with { PolarisationT = Estimate.Exact(0.45) };
        FieldMap map = FieldCases.Fast.Solve(FieldCases.One(FieldCases.Coil(0.02975, rods)), TestContext.Current.CancellationToken).Map;
        StringScene scene = new(map, [1], StringGrid.Over([0], 120, symmetric: true));
        StringModel plain = new()
        {
            CoreDiameterM = 0.43e-3,
            OuterDiameterM = 0.43e-3,
            RelativePermeability = Estimate.Exact(80),
        };
        double Db(double beside)
        {
            StringAnswer answer = scene.Solve(plain, 0.0052 + beside, 0.009 + 0.0025);
            return 20 * Math.Log10(Math.Abs(answer.SidewaysWbPerM!.Value / answer.VerticalWbPerM));
        }

        Assert.True(Db(0) < -40, "over the middle of a pole");
        Assert.True(Db(0.25e-3) < Db(0.5e-3) && Db(0.5e-3) < Db(1e-3));
        Assert.True(Db(0.9e-3) < -18 && Db(1.7e-3) > -14, $"{Db(0.9e-3)} {Db(1.7e-3)}");
    }

    [Fact]
    public void Linkage_alone_is_that_of_the_whole_answer()
    {
        PoleModel rods = FieldCases.Rods(FieldCases.SixM, 4.5) with { PolarisationT = Estimate.Exact(0.45) };
        StringScene scene = new(
            FieldCases.Fast.Solve(FieldCases.One(FieldCases.Coil(0.02975, rods)), TestContext.Current.CancellationToken).Map,
            [1],
            StringGrid.Over([0], 60)
        );
        StringModel plain = new()
        {
            CoreDiameterM = 0.43e-3,
            OuterDiameterM = 0.43e-3,
            RelativePermeability = Estimate.Exact(80),
        };
        double whole = scene.Solve(plain, 0.004, 0.0115).LinkageWb;
        Assert.Equal(whole, scene.LinkageWb(plain, 0.004, 0.0115), 1e-3 * Math.Abs(whole));
    }
}
