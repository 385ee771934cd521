namespace Coilwright.Workshop.People;

/// <summary>One kind of thing that a person may do.</summary>
public enum Right
{
    /// <summary>See the shop's day: batches, pieces, recipes that are no secret, help.</summary>
    Look,

    /// <summary>Wind and read coils, weigh spools, tell the room's temperature.</summary>
    Wind,

    /// <summary>Put pieces together, time wax and ink, charge magnets, print labels.</summary>
    Finish,

    /// <summary>Test a finished piece.</summary>
    Test,

    /// <summary>Reserve, ship, take back; customers and letters to them.</summary>
    Deliver,

    /// <summary>Take in wire.</summary>
    Stock,

    /// <summary>Recipes, forecasts and searches; begin and end a batch; machines; limits of charts.</summary>
    Design,

    /// <summary>See recipes that are marked secret, and say which are.</summary>
    Secrets,

    /// <summary>People, rules, instruments, files, backups.</summary>
    Manage,

    /// <summary>Pass on what a meter or a counter reads.</summary>
    Instrument,
}
