namespace Coilwright.Workshop.SetUp;

/// <summary>What is being done, as far as it can hurt someone.</summary>
public enum Job
{
    /// <summary>The winder is set up, tested or run by itself, without wire in the hand.</summary>
    RunningWinder,

    /// <summary>A coil is wound: spindle, wire, and ends or a splice to solder.</summary>
    Winding,

    /// <summary>A length of wire is cut, bared and measured.</summary>
    MeasuringWire,

    /// <summary>A coil's ends are bared and read.</summary>
    ReadingCoil,

    /// <summary>Coils, magnets and leads become a piece.</summary>
    Assembly,

    /// <summary>Leads are soldered and each pole is tried with iron.</summary>
    Wiring,

    /// <summary>Magnets are charged or knocked down.</summary>
    Charging,

    /// <summary>A two-part ink is mixed or printed.</summary>
    Marking,

    /// <summary>A finished piece is tested: poles, probe, source.</summary>
    Testing,

    /// <summary>Finished pieces are handled, matched or packed.</summary>
    Handling,

    /// <summary>A sound is played from a file.</summary>
    Listening,

    /// <summary>The piece is in its owner's hands.</summary>
    Owning,

    /// <summary>A returned piece or old parts are worked on.</summary>
    Mending,
}
