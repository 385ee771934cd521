namespace Coilwright.Physics.Winding;

/// <summary>A winder that is stopped by the clock: what its speed and its stopping leave of the turns.</summary>
/// <remarks>
/// Turns = speed · time. Speed and stopping scatter by themselves, so their parts add as squares: √(u² + (t/T)²) for a speed spread u and a
/// stop spread t over T seconds.
/// </remarks>
public static class ClockStop
{
    /// <summary>95 % doubt of the speed where a shop has stated none, as a part of it; our assumption [WinderPractice].</summary>
    public const double UsualSpeedSpread = 0.1;

    /// <summary>95 % doubt of starting and stopping where a shop has stated none: a hand on a switch, s; our assumption.</summary>
    public const double UsualStopS = 1;

    /// <summary>Speed taken where no winder is named; our assumption.</summary>
    public const double UsualSpeedRpm = 1000;

    /// <summary>95 % doubt of the turns of one coil, as a part of them.</summary>
    /// <param name="speedSpread">95 % doubt of the speed, as a part of it.</param>
    /// <param name="stopS">95 % doubt of starting and stopping, s.</param>
    /// <param name="seconds">How long it is wound, s, above zero.</param>
    public static double TurnsSpread(double speedSpread, double stopS, double seconds) =>
        Math.Sqrt(speedSpread * speedSpread + stopS / seconds * (stopS / seconds));

    /// <summary>The same for turns wound at a speed.</summary>
    /// <param name="speedSpread">95 % doubt of the speed, as a part of it.</param>
    /// <param name="stopS">95 % doubt of starting and stopping, s.</param>
    /// <param name="turns">Turns, above zero.</param>
    /// <param name="speedRpm">Speed, turns per minute, above zero.</param>
    public static double TurnsSpread(double speedSpread, double stopS, double turns, double speedRpm) =>
        TurnsSpread(speedSpread, stopS, turns / speedRpm * 60);
}
