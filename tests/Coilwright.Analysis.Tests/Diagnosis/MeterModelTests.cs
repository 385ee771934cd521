using System.Numerics;
using Coilwright.Analysis.Diagnosis;

namespace Coilwright.Analysis.Tests.Diagnosis;

public sealed class MeterModelTests
{
    [Fact]
    public void Inductance_and_Q_are_those_of_the_complex_impedance() =>
        Gen.Select(Gen.Double[0.5, 10], Gen.Double[1e3, 2e4], Gen.Double[0, 3e-10], Gen.Double[50, 5e3])
            .ForAll(
                (henry, ohm, farad, hz) =>
                {
                    double omega = 2 * Math.PI * hz;
                    Complex seen = 1 / (1 / new Complex(ohm, omega * henry) + new Complex(0, omega * farad));
                    (double shownH, double quality) = MeterModel.Of(henry, ohm, farad, hz);
                    return Math.Abs(shownH - seen.Imaginary / omega) <= 1e-9 * Math.Max(henry, Math.Abs(shownH))
                        && Math.Abs(quality - seen.Imaginary / seen.Real) <= 1e-9 * Math.Max(1, Math.Abs(quality));
                }
            );

    [Theory] // rule of thumb at a resonance of 9.2 kHz: +0.02 % at 120 Hz, +1.2 % at 1 kHz (arithmetic: 1/(1 − (f/f₀)²))
    [InlineData(120, 0.00017)]
    [InlineData(1000, 0.012)]
    public void Own_capacitance_makes_a_meter_show_more_inductance(double hz, double expected)
    {
        double farad = 1 / (Math.Pow(2 * Math.PI * 9200, 2) * 2.5);
        Assert.Equal(expected, MeterModel.Of(2.5, 1, farad, hz).InductanceH / 2.5 - 1, 0.05 * expected);
    }
}
