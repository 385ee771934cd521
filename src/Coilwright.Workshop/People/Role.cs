namespace Coilwright.Workshop.People;

/// <summary>What a person is in the shop, or a program that speaks to it.</summary>
public enum Role
{
    /// <summary>Winds coils, reads them, puts pieces together.</summary>
    Winder,

    /// <summary>Tests pieces and finishes them; winds too.</summary>
    Tester,

    /// <summary>Draws up recipes, begins batches, decides; sees secret recipes.</summary>
    Engineer,

    /// <summary>Customers, shipping, wire that comes in.</summary>
    Office,

    /// <summary>Everything, and who may do what.</summary>
    Owner,

    /// <summary>No person: a meter or a counter that passes on what it reads, and sees nothing.</summary>
    Instrument,
}
