using System.Globalization;
using System.Text.Json.Nodes;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Machines;

/// <summary>The shop's winders: brought in as files, found by name, and corrected by a marked test.</summary>
public sealed class MachineService(IMachineRecords records, TimeProvider clock)
{
    /// <summary>The winders as they are now, by name.</summary>
    public async Task<IReadOnlyList<Machine>> ListAsync(CancellationToken cancel)
    {
        IReadOnlyList<MachineRecord> all = await records.AllAsync(cancel).ConfigureAwait(false);
        return
        [
            .. all.GroupBy(record => record.Name, StringComparer.OrdinalIgnoreCase)
                .Select(same => Understood(same.Last()))
                .OrderBy(machine => machine.Name, StringComparer.OrdinalIgnoreCase),
        ];
    }

    /// <summary>A winder by name; null when there is none.</summary>
    public async Task<Machine?> FindAsync(string name, CancellationToken cancel) =>
        (await ListAsync(cancel).ConfigureAwait(false)).FirstOrDefault(machine =>
            string.Equals(machine.Name, name.Trim(), StringComparison.OrdinalIgnoreCase)
        );

    /// <summary>Keeps a winder as its file states it, or gives every problem.</summary>
    public Task<IReadOnlyList<Problem>> KeepAsync(Guid id, string json, string person, CancellationToken cancel) =>
        KeepAsync(id, json, MachineReader.ReadFile(json), person, cancel);

    /// <summary>Keeps a winder typed into a form: a new one under a name of its own, or a change of one that is there.</summary>
    /// <param name="id">Client-made id.</param>
    /// <param name="json">The machine (coilwright.machine/1); a comma may be decimal.</param>
    /// <param name="changed">Name of the winder that is changed; empty for a new one.</param>
    /// <param name="person">Who enters it.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<IReadOnlyList<Problem>> KeepTypedAsync(Guid id, string json, string changed, string person, CancellationToken cancel)
    {
        ReadOutcome<Machine> read = MachineReader.Read(json);
        List<Problem> problems = [.. read.Problems];
        string name = read.Value?.Name ?? "";
        IReadOnlyList<MachineRecord> all = await records.AllAsync(cancel).ConfigureAwait(false);
        if (changed.Length == 0 && all.Any(one => one.Id != id && NameKey.Same(one.Name, name)))
        {
            problems.Add(new Problem("name", "another winder has this name", name, "a name of its own"));
        }

        if (changed.Length > 0 && name.Length > 0 && !NameKey.Same(changed, name))
        {
            problems.Add(new Problem("name", "a winder keeps its name: batches know it by it", name, changed));
        }

        return problems.Count > 0 ? problems : await KeepAsync(id, json, read, person, cancel).ConfigureAwait(false);
    }

    /// <summary>The newest document of a winder, as it was entered; null when there is none of that name.</summary>
    public async Task<string?> TextAsync(string name, CancellationToken cancel) =>
        (await records.AllAsync(cancel).ConfigureAwait(false)).LastOrDefault(one => NameKey.Same(one.Name, name))?.Json;

    private async Task<IReadOnlyList<Problem>> KeepAsync(
        Guid id,
        string json,
        ReadOutcome<Machine> read,
        string person,
        CancellationToken cancel
    )
    {
        if (!read.Ok)
        {
            return read.Problems;
        }

        if (read.Value!.Name.Length == 0)
        {
            return [new Problem("name", "a machine of a shop needs a name", null, "1 to 200 letters")];
        }

        await records
            .AddAsync(new MachineRecord(id, read.Value.Name, json, person.Trim(), clock.GetUtcNow()), cancel)
            .ConfigureAwait(false);
        return [];
    }

    /// <summary>Adds a winder of which only the name is known: hand-guided, its counter not tested yet.</summary>
    public async Task<IReadOnlyList<Problem>> AddAsync(Guid id, string name, string person, CancellationToken cancel)
    {
        string tidy = name.Trim();
        if (tidy.Length == 0)
        {
            return [new Problem("winderName", "what is the winder called?", null, "1 to 200 letters")];
        }

        if ((await records.AllAsync(cancel).ConfigureAwait(false)).Any(one => one.Id != id && NameKey.Same(one.Name, tidy)))
        {
            return [new Problem("winderName", "another winder has this name", tidy, "a name of its own")];
        }

        JsonObject machine = new()
        {
            ["format"] = MachineReader.Format,
            ["name"] = tidy,
            ["kind"] = MachineReader.WordOf(MachineKind.HandGuided),
        };
        return await KeepAsync(id, machine.ToJsonString(), person, cancel).ConfigureAwait(false);
    }

    /// <summary>Records a marked test of a counter; the machine is kept anew with it.</summary>
    public async Task<IReadOnlyList<Problem>> KeepTestAsync(
        Guid id,
        string name,
        string turns,
        string counted,
        string person,
        CancellationToken cancel
    )
    {
        MachineRecord? record = (await records.AllAsync(cancel).ConfigureAwait(false)).LastOrDefault(one =>
            string.Equals(one.Name, name.Trim(), StringComparison.OrdinalIgnoreCase)
        );
        if (record is null)
        {
            return [new Problem("machine", "there is no such machine", name)];
        }

        ReadOutcome<CounterTest> test = CounterTest.Read(turns, counted);
        if (!test.Ok)
        {
            return test.Problems;
        }

        JsonObject json = JsonNode.Parse(record.Json)!.AsObject();
        json["counter"] = new JsonObject { ["turns"] = test.Value!.Turns, ["counted"] = test.Value.Counted };
        string text = json.ToJsonString();
        return await KeepAsync(id, text, MachineReader.Read(text), person, cancel).ConfigureAwait(false);
    }

    /// <summary>A machine in a line.</summary>
    public static string Words(Machine machine)
    {
        string spindles = machine.Spindles > 1 ? string.Create(CultureInfo.InvariantCulture, $", {machine.Spindles} spindles") : "";
        return $"{MachineReader.WordOf(machine.Kind)}, {CounterWords(machine)}{spindles}";
    }

    private static string CounterWords(Machine machine)
    {
        if (machine.Kind == MachineKind.Timed)
        {
            return "no counter";
        }

        return machine.Counter is { } test
            ? string.Create(CultureInfo.InvariantCulture, $"counter × {test.Correction.Value:0.0000}")
            : "counter not tested yet";
    }

    private static Machine Understood(MachineRecord record) =>
        MachineReader.Read(record.Json).Value
        ?? throw new InvalidOperationException($"Machine {record.Name} was kept and cannot be read any more.");
}
