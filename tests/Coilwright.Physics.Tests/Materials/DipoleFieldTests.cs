using Coilwright.Physics.Materials;
using CsCheck;

namespace Coilwright.Physics.Tests.Materials;

/// <summary>The bound on the far field of magnets.</summary>
public sealed class DipoleFieldTests
{
    // By hand: µ0/2π is 2e-7, so 1 A·m² at 1 m has 2e-7 T (0.002 G), and 5 A·m² at 2.1 m 1e-6/9.261 = 1.0798e-7 T.
    [Theory]
    [InlineData(1, 1, 2e-7)]
    [InlineData(5, 2.1, 1.0798e-7)]
    [InlineData(0, 4.6, 0)]
    public void The_field_on_the_axis_is_what_arithmetic_says(double momentAm2, double distanceM, double tesla) =>
        Assert.Equal(tesla, DipoleField.LargestT(momentAm2, distanceM), 5e-12); // half of the last printed digit

    /// <summary>
    /// Against another formula: the axial field of a current loop of 1 cm, µ0·I·a²/(2·(a² + z²)^1.5), which is a dipole's far away, to
    /// 1.5·(a/z)².
    /// </summary>
    [Theory]
    [InlineData(2.1)]
    [InlineData(4.6)]
    public void It_is_the_axial_field_of_a_small_loop(double distanceM)
    {
        const double RadiusM = 0.01,
            MomentAm2 = 3;
        double currentA = MomentAm2 / (Math.PI * RadiusM * RadiusM),
            loopT = 4e-7 * Math.PI * currentA * RadiusM * RadiusM / (2 * Math.Pow(RadiusM * RadiusM + distanceM * distanceM, 1.5));

        Assert.Equal(loopT, DipoleField.LargestT(MomentAm2, distanceM), 2 * loopT * RadiusM * RadiusM / (distanceM * distanceM));
    }

    /// <summary>
    /// Another method: two magnetic charges a millimetre apart, in any direction. None exceeds the bound, and the axis reaches it.
    /// </summary>
    [Fact]
    public void No_direction_has_more_than_the_axis() =>
        Gen.Select(Gen.Double[0, Math.PI], Gen.Double[0.5, 10], Gen.Double[0.01, 100])
            .ForAll(
                (angle, distanceM, momentAm2) =>
                {
                    double ratio = TwoChargesT(momentAm2, distanceM, angle) / DipoleField.LargestT(momentAm2, distanceM);
                    // (d/2r)² is 1e-6 at most
                    return ratio <= 1 + 1e-5 && Math.Abs(ratio - Math.Sqrt(1 + 3 * Math.Cos(angle) * Math.Cos(angle)) / 2) < 1e-5;
                }
            );

    [Theory]
    [InlineData(-1, 1)]
    [InlineData(double.NaN, 1)]
    [InlineData(1, 0.05)]
    public void Outside_its_range_it_is_refused(double momentAm2, double distanceM) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => DipoleField.LargestT(momentAm2, distanceM));

    private static double TwoChargesT(double momentAm2, double distanceM, double angle)
    {
        const double ApartM = 1e-3;
        double x = distanceM * Math.Sin(angle),
            z = distanceM * Math.Cos(angle),
            charge = 1e-7 * momentAm2 / ApartM; // µ0/4π·q
        double up = Math.Pow(x * x + (z - ApartM / 2) * (z - ApartM / 2), -1.5),
            down = Math.Pow(x * x + (z + ApartM / 2) * (z + ApartM / 2), -1.5);
        return charge * double.Hypot(x * (up - down), (z - ApartM / 2) * up - (z + ApartM / 2) * down);
    }
}
