using System.Globalization;
using Coilwright.Physics.Wire;

namespace Coilwright.Demo;

/// <summary>What goes wrong with a made-up coil.</summary>
internal enum DemoFault
{
    None,
    ShortedTurns,
    Open,

    /// <summary>Measured straight from the winder, and nobody wrote a temperature down.</summary>
    WarmUnknown,
}

/// <summary>What the winder of the demo types for one coil.</summary>
internal sealed record DemoCoil(DemoFault Fault, string Resistance, string Temperature, string Inductance);

/// <summary>Readings of a made-up run: scattered about the forecast, the same for the same number.</summary>
/// <param name="seed">Any number; decides the scatter.</param>
/// <param name="ohmAt20C">Forecast resistance, Ω.</param>
/// <param name="inductanceH">Forecast inductance at 1 kHz, H.</param>
internal sealed class DemoCoils(int seed, double ohmAt20C, double inductanceH)
{
    /// <summary>Spread of a good winder's coils from one spool, one standard deviation; common practice, no source.</summary>
    private const double Spread = 0.004;

    private readonly Random _random = new(seed);

    /// <summary>The next coil as the meter shows it.</summary>
    /// <param name="spoolFactor">Resistance of this spool's wire over nominal.</param>
    /// <param name="coilC">Temperature of the coil, °C.</param>
    /// <param name="typedC">What is typed as its temperature; empty takes the room's.</param>
    /// <param name="fault">What is wrong with it.</param>
    public DemoCoil Next(double spoolFactor, double coilC, string typedC = "", DemoFault fault = DemoFault.None)
    {
        double scatter = 1 + Spread * Gauss(),
            ohm = CopperWire.CorrectFrom20C(ohmAt20C * spoolFactor * scatter, coilC),
            henry = inductanceH * (1 + Spread * Gauss());
        return fault switch
        {
            DemoFault.Open => new DemoCoil(fault, "open", typedC, ""),
            DemoFault.ShortedTurns => new DemoCoil(fault, Kilo(ohm * 0.93), typedC, Number(henry * 0.62)),
            _ => new DemoCoil(fault, Kilo(ohm), typedC, Number(henry)),
        };
    }

    /// <summary>Standard normal by the polar form of Box and Muller.</summary>
    private double Gauss()
    {
        double radius = Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble()));
        return radius * Math.Cos(2 * Math.PI * _random.NextDouble());
    }

    private static string Kilo(double ohm) => (ohm / 1000).ToString("0.000", CultureInfo.InvariantCulture) + " k";

    private static string Number(double henry) => henry.ToString("0.00", CultureInfo.InvariantCulture) + " H";
}
