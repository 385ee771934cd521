using Coilwright.Physics.Wire;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Readings;

/// <summary>The value by which readings and targets of one quantity are held against each other.</summary>
/// <remarks>A DC resistance at 20 °C where its temperature is known, all else as it stands.</remarks>
public static class ComparableValue
{
    /// <summary>The value of a reading, SI.</summary>
    /// <param name="quantity">Quantity name of the file format.</param>
    /// <param name="si">As read, SI.</param>
    /// <param name="temperatureC">Temperature it was read at, °C; null when nobody wrote it down.</param>
    public static double Of(string quantity, double si, double? temperatureC) =>
        quantity == "dcResistance" && temperatureC is { } celsius ? CopperWire.CorrectTo20C(si, celsius) : si;

    /// <summary>What the numbers of a target are multiplied by.</summary>
    public static double Factor(string quantity, Target target) => Of(quantity, 1, target.TemperatureC);
}
