using System.Numerics;
using Coilwright.Formats.Curves;
using Coilwright.Workshop.Entry;

namespace Coilwright.Formats.Tests.Curves;

public sealed class CurveTableTests
{
    [Theory]
    [InlineData("frequency [kHz],gain [dB]\n0.1,0\n1,0.5\n2,1.5\n5,-3\n", "comma", "point")]
    [InlineData("Frequency (kHz);Gain (dB)\n0,1;0\n1;0,5\n2;1,5\n5;-3\n", "semicolon", "comma")]
    [InlineData("frequency_kHz\tgain_dB\n0.1\t0\n1\t0.5\n2\t1.5\n5\t-3\n", "tab", "point")]
    [InlineData(
        "# made on a bench\r\n\r\n\"frequency [kHz]\",\"gain [dB]\",remark\r\n0.1,0,\"a, b\"\r\n1,0.5,\r\n2,1.5,\r\n5,−3,\r\n",
        "comma",
        "point"
    )]
    [InlineData("* Freq(kHz) , Gain(dB)\n0.1,0\n1,0.5\n2,1.5\n5,-3\n", "comma", "point")]
    public void Delimiter_decimal_mark_and_units_are_recognised_and_told(string text, string delimiter, string mark)
    {
        ReadOutcome<CurveTable> outcome = CurveTable.Read(text);
        Assert.True(outcome.Ok, string.Join("\n", outcome.Problems));
        Assert.Equal((delimiter, mark), (outcome.Value!.Delimiter, outcome.Value.Decimal));
        Assert.Equal([100, 1000, 2000, 5000], outcome.Value.Curve.FrequenciesHz);
        Assert.Equal([0, 0.5, 1.5, -3], outcome.Value.Curve.GainDb!);
        Assert.Null(outcome.Value.Curve.PhaseDegrees);
        Assert.Equal(["frequency in kHz", "gain in dB"], outcome.Value.Columns.Take(2));
    }

    [Fact]
    public void An_impedance_is_read_from_its_parts_or_from_magnitude_and_phase()
    {
        Complex[] parts = CurveTable.Read("f [Hz],re [kΩ],im [kΩ]\n100,8,1\n200,8,2\n300,8,3\n400,8,4\n").Value!.Curve.ImpedanceOhm!;
        Complex[] polar = CurveTable
            .Read(
                $"f [Hz],impedance [Ω],phase "
                    + $"[rad]\n100,{new Complex(8000, 1000).Magnitude:R},{Math.Atan2(1, 8):R}\n200,1,0\n300,1,0\n400,1,0\n"
            )
            .Value!.Curve.ImpedanceOhm!;
        Assert.Equal(new Complex(8000, 1000), parts[0]);
        Assert.Equal(0, (parts[0] - polar[0]).Magnitude, 1e-9);
    }

    [Fact]
    public void A_ratio_becomes_decibels()
    {
        double[] gain = CurveTable.Read("f [Hz],gain [1]\n100,1\n200,2\n300,1\n400,0.1\n").Value!.Curve.GainDb!;
        Assert.Equal([0, 6.0206, 0, -20], gain.Select(db => Math.Round(db, 4)));
    }

    [Theory]
    [InlineData(
        "f [Hz],gain [dB]\n100,0\n200,loud\n300,1\nlow,2\n",
        "line 3, column 2 \"gain [dB]\": \"loud\" is not a number",
        "line 5, column 1 \"f [Hz]\": \"low\" is not a number"
    )]
    [InlineData("f [Hz],gain [dB]\n100,0\n", "a curve needs more points")]
    [InlineData(
        "f [Hz],gain [dB]\n100,0\n300,1\n200,1\n400,1\n400,2\n",
        "line 4, column 1 \"f [Hz]\": the frequencies must rise; this one lies below that of line 3",
        "line 6, column 1 \"f [Hz]\": this frequency stands in line 5 too"
    )]
    [InlineData("f [Hz],impedance [kΩ]\n100,8\n200,8\n300,8\n400,8\n", "line 1: an impedance without its phase")]
    [InlineData(
        "f [Hz],impedance [kΩ],phase [deg]\n100,8,0\n200,8,\n300,8\n400,8,0\n",
        "line 3, column 3 \"phase [deg]\": the phase is missing",
        "line 4, column 3 \"phase [deg]\": the phase is missing"
    )]
    [InlineData("f [Hz],re [Ω]\n100,8\n200,8\n300,8\n400,8\n", "line 1: the real part needs its imaginary part")]
    [InlineData("f [Hz],gain [dB]\n-100,0\n0,1\n300,1\n400,1\n", "line 2, column 1 \"f [Hz]\": this is no frequency", "line 3, column 1")]
    [InlineData("f [Hz],gain [kg]\n100,0\n", "line 1, column 2: \"kg\" is not a unit of this column")]
    [InlineData("f [Hz];gain [dB]\n100,5;0\n200.5;1\n300;1\n400;1\n", "one decimal mark is needed")]
    [InlineData("f [Hz],gain [dB]\n100,0,5\n200,1\n300,1\n400,1\n", "line 2: more cells than the header has columns")]
    [InlineData("gain [dB]\n1\n2\n3\n4\n", "line 1: there is no column \"frequency [Hz]\"")]
    [InlineData("", "line 1: the table is empty")]
    [InlineData("f [Hz],gain [dB]\n100,NaN\n200,1e999\n300,1\n400,1\n", "line 2, column 2", "line 3, column 2")]
    public void What_is_wrong_is_told_with_line_and_column_and_nothing_is_imported(string text, params string[] told)
    {
        ReadOutcome<CurveTable> outcome = CurveTable.Read(text);
        Assert.Null(outcome.Value);
        string all = string.Join(
            "\n",
            outcome.Problems.Select(problem => problem.Field.Length == 0 ? problem.Message : $"{problem.Field}: {problem.Message}")
        );
        Assert.All(told, one => Assert.Contains(one, all, StringComparison.Ordinal));
    }

    [Fact]
    public void No_text_at_all_breaks_the_reader() =>
        Gen.String[Gen.Char["0123456789.,;\t\n\r\"eE-+[]() frequncyaidBHzkΩ#*_"], 0, 200]
            .ForAll(text =>
            {
                ReadOutcome<CurveTable> outcome = CurveTable.Read("frequency [Hz],gain [dB]\n" + text);
                return outcome.Ok || outcome.Problems.Count > 0;
            });
}
