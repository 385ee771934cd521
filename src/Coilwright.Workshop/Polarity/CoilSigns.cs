using Coilwright.Physics.Winding;

namespace Coilwright.Workshop.Polarity;

/// <summary>The three signs of a coil as it is connected.</summary>
/// <param name="Name">What the shop calls it.</param>
/// <param name="Direction">Sense of winding from start to finish.</param>
/// <param name="Side">The side that sense is seen from.</param>
/// <param name="Hot">Which end goes towards the output.</param>
/// <param name="Pole">The pole it shows the strings.</param>
/// <param name="TurnsArea">Turns × area, or turns where all coils are of one size; above 0. Weighs the hum.</param>
public sealed record CoilSigns(string Name, WindingDirection Direction, SeenFrom Side, HotEnd Hot, PoleTop Pole, double TurnsArea = 1)
{
    /// <summary>
    /// +1 when the wire runs counter-clockwise seen from the top on its way to the hot end, −1 when clockwise. This is the sign of its hum.
    /// </summary>
    public int Winding =>
        (Direction == WindingDirection.CounterClockwise ? 1 : -1) * (Side == SeenFrom.Top ? 1 : -1) * (Hot == HotEnd.Finish ? 1 : -1);

    /// <summary>+1 north up, −1 south up, 0 not stated.</summary>
    public int Magnet =>
        Pole switch
        {
            PoleTop.North => 1,
            PoleTop.South => -1,
            _ => 0,
        };

    /// <summary>Winding × magnet: the sign of a string's signal; 0 when the pole is not stated.</summary>
    public int Strings => Winding * Magnet;

    /// <summary>
    /// Sign of the first swing at the hot end, against the other end, when iron comes near a pole; 0 when the pole is not stated.
    /// </summary>
    /// <remarks>
    /// Iron strengthens the flux that leaves the top of a north pole. Voltage from start to finish of a counter-clockwise winding is −dΦ/dt
    /// with Φ counted
    /// upwards (Faraday's and Lenz's laws) [Signs]: so the first swing is the opposite of the string sign. Iron drawn away swings the other
    /// way.
    /// </remarks>
    public int FirstSwing => -Strings;

    /// <summary>The first swing in words for the person at the meter.</summary>
    public string FirstSwingWords =>
        FirstSwing switch
        {
            > 0 => "up: the hot end swings positive first",
            < 0 => "down: the hot end swings negative first",
            _ => "unknown: the pole is not stated",
        };

    /// <summary>The same coil with its two ends exchanged.</summary>
    public CoilSigns Reversed() => this with { Hot = Hot == HotEnd.Finish ? HotEnd.Start : HotEnd.Finish };
}
