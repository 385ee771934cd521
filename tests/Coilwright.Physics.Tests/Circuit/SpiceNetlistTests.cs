using System.Globalization;
using Coilwright.Physics.Circuit;

namespace Coilwright.Physics.Tests.Circuit;

public sealed class SpiceNetlistTests
{
    [Fact]
    public void The_whole_file_reads_as_approved_whatever_the_culture()
    {
        LumpedPickup pickup = new(7800, 4.4, 120e-12) { Eddy = [new(0.9, 60e3)], ParallelLossOhm = 2e6 };
        LoadCircuit load = new()
        {
            Volume = new(500e3, 0.5),
            Tone = new(250e3, 22e-9, 1),
            CableCapacitanceF = 500e-12,
            InputResistanceOhm = 1e6,
        };
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        comma.NumberFormat.NumberDecimalSeparator = ",";
        CultureInfo.CurrentCulture = comma;
        try
        {
            Assert.Equal(
                """
                * Pickup and load, SI units; the source is the voltage that the string induces
                Vstring src 0 DC 0 AC 1
                Rcoil src coil1 7800
                Lcoil coil1 coil2 4.4
                Leddy1 coil2 pickup 0.9
                Reddy1 coil2 pickup 60000
                Ccoil pickup 0 1.2E-10
                Rloss pickup 0 2000000
                Rtone pickup tone 250000
                Ctone tone 0 2.2E-08
                Rabove pickup out 250000
                Rbelow out 0 250000
                Ccable out 0 5E-10
                Rinput out 0 1000000
                .ac dec 100 20 20000
                .print ac vdb(out) vp(out)
                .end

                """.ReplaceLineEndings("\n"),
                SpiceNetlist.Write(pickup, load, 20, 20_000, 301)
            );
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Ends_of_the_controls_need_no_resistor_of_zero()
    {
        string text = SpiceNetlist.Parts(
            new LumpedPickup(6200, 2.5, 120e-12),
            new LoadCircuit { Volume = new(500e3, 1), Tone = new(500e3, 22e-9, 0) }
        );
        Assert.DoesNotContain("Rtone", text, StringComparison.Ordinal);
        Assert.Contains("Ctone pickup 0 2.2E-08\n", text, StringComparison.Ordinal);
        Assert.Contains("Vwiper pickup out DC 0\n", text, StringComparison.Ordinal);
        Assert.Contains(
            "Vground out 0 DC 0\n",
            SpiceNetlist.Parts(new LumpedPickup(6200, 2.5, 120e-12), new LoadCircuit { Volume = new(500e3, 0) }),
            StringComparison.Ordinal
        );
    }
}
