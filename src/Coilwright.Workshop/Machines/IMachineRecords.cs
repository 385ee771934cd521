namespace Coilwright.Workshop.Machines;

/// <summary>What a store must do for the shop's winders.</summary>
public interface IMachineRecords
{
    /// <summary>Every record in order of entry, superseded ones too.</summary>
    Task<IReadOnlyList<MachineRecord>> AllAsync(CancellationToken cancel);

    /// <summary>Adds a record; a second one with the same id is not added again.</summary>
    Task AddAsync(MachineRecord machine, CancellationToken cancel);
}
