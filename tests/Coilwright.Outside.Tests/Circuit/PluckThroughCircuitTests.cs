using System.Globalization;
using System.Numerics;
using System.Text;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Sound;
using Coilwright.Physics.Strings;

namespace Coilwright.Outside.Tests.Circuit;

/// <summary>A plucked string through a pickup on its load, in time, against the transient analysis of a circuit simulator.</summary>
public sealed class PluckThroughCircuitTests
{
    private const int Rate = 48_000;
    private const double LengthS = 0.05;

    private static readonly LumpedPickup s_pickup = new(6200, 2.4, 110e-12);

    private static readonly LoadCircuit s_player = new()
    {
        Volume = new(500e3, 0.8),
        Tone = new(500e3, 22e-9, 1),
        CableCapacitanceF = 500e-12,
        InputResistanceOhm = 1e6,
    };

    private static readonly PluckedString s_string = new()
    {
        FundamentalHz = 110,
        LengthM = 0.648,
        PluckM = 0.13,
        WidthM = 0.01,
        Inharmonicity = 1e-4,
    };

    [Fact]
    public async Task The_voltage_behind_the_load_is_the_simulators_at_every_moment()
    {
        StringAperture point = StringAperture.OfPoints((0, 1));
        (double Amplitude, double Hz, double DecayPerS)[] sines =
        [
            .. s_string
                .Partials(12_000)
                .Select(one => (one.VelocityMPerS * point.Heard(s_string.RadPerM(one.Number), 0.1), one.FrequencyHz, one.DecayPerS)),
        ];
        double[] ours = FrequencyFilter.Of(Rate, Gains).Apply(DampedSines.Samples(sines, Rate, (int)(2 * LengthS * Rate)));
        double[][] theirs = await TransientAsync(sines);
        double loudest = theirs.Max(row => Math.Abs(row[1])),
            worst = 0;
        foreach (double[] row in theirs.Where(row => row[0] < LengthS - 1e-3))
        {
            double place = row[0] * Rate;
            int at = (int)Math.Round(place);
            worst = Math.Abs(place - at) < 1e-3 ? Math.Max(worst, Math.Abs(ours[at] - row[1])) : worst;
        }

        Assert.True(loudest > 0.01, "nothing was heard");
        Evidence
            .Outside(
                "a plucked string through pickup and load in time, largest difference at any sample of 49 ms",
                "transient analysis of ngspice, the same partials as damped sources [Ngspice]",
                "run here",
                "method: sound and response end at half the rate; the simulator steps 1/16 of a sample"
            )
            .Within(100 * worst / loudest, 0, 0.5, "% of the loudest")
            .Record();
    }

    private static Complex[] Gains(double[] frequenciesHz)
    {
        Response response = PickupResponse.Compute(s_pickup, s_player, frequenciesHz);
        return
        [
            .. response.Points.Select(point =>
                Complex.FromPolarCoordinates(
                    response.LowFrequencyGain * Math.Pow(10, point.GainDb / 20),
                    point.PhaseDegrees * Math.PI / 180
                )
            ),
        ];
    }

    /// <summary>Rows of time and voltage.</summary>
    private static async Task<double[][]> TransientAsync((double Amplitude, double Hz, double DecayPerS)[] sines)
    {
        const string Driven = "Vstring src 0 DC 0 AC 1\n";
        string parts = SpiceNetlist.Parts(s_pickup, s_player);
        Assert.Contains(Driven, parts, StringComparison.Ordinal);
        StringBuilder chain = new();
        for (int i = 0; i < sines.Length; i++)
        {
            (double amplitude, double hz, double decay) = sines[i];
            string from = i == 0 ? "src" : FormattableString.Invariant($"s{i}"),
                to = i == sines.Length - 1 ? "0" : FormattableString.Invariant($"s{i + 1}");
            chain.Append(CultureInfo.InvariantCulture, $"Vpart{i} {from} {to} SIN(0 {amplitude:R} {hz:R} 0 {decay:R})\n");
        }

        string step = (1.0 / Rate).ToString("R", CultureInfo.InvariantCulture),
            fine = (1.0 / Rate / 16).ToString("R", CultureInfo.InvariantCulture);
        string text =
            $"* plucked\n{parts.Replace(Driven, chain.ToString(), StringComparison.Ordinal)}.options reltol=1e-6\n.control\nset numdgt=14\n"
            + $"set wr_singlescale\ntran {step} {LengthS.ToString(CultureInfo.InvariantCulture)} 0 {fine}\nlinearize v(out)\n"
            + "wrdata out.data v(out)\nquit\n.endc\n.end\n";
        DirectoryInfo folder = Directory.CreateTempSubdirectory("coilwright-pluck-");
        try
        {
            CancellationToken cancel = TestContext.Current.CancellationToken;
            await File.WriteAllTextAsync(Path.Combine(folder.FullName, "all.sp"), text, cancel);
            return Ngspice.Rows(folder.FullName, "out", await Ngspice.Run(folder.FullName, "all.sp", cancel));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
