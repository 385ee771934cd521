using Coilwright.Physics;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Notes;

namespace Coilwright.Formats.Notes;

/// <summary>Old notes: what each column is read as.</summary>
public sealed partial class NoteTable
{
    private NoteColumn[] Understand(string[] headers, IReadOnlyList<(string Header, string Meaning)> said)
    {
        NoteColumn[] columns = [.. headers.Select((header, at) => Guess(header, CellsOf(at)))];
        KeepOneOfEach(columns);
        foreach ((string header, string meaning) in said)
        {
            int at = Array.FindIndex(headers, one => string.Equals(one.Trim(), header.Trim(), StringComparison.OrdinalIgnoreCase));
            if (at < 0)
            {
                string near = string.Join(", ", NearNames.Find(header, headers, 5));
                _problems.Add(new Problem("--column", "there is no such heading", header, near));
            }
            else if (Said(headers[at], meaning, CellsOf(at)) is { } column)
            {
                columns[at] = column;
                for (int other = 0; other < columns.Length; other++)
                {
                    bool gives = other != at && column.Role is not null && columns[other].Role == column.Role;
                    columns[other] = gives ? columns[other] with { Role = null, Unit = "", UnitFrom = "" } : columns[other];
                }
            }
        }

        return columns;
    }

    /// <summary>Of two columns of one role the one whose heading is the role's name is taken, else the first.</summary>
    private static void KeepOneOfEach(NoteColumn[] columns)
    {
        foreach (
            IGrouping<NoteRole?, NoteColumn> same in columns
                .Where(column => column.Role is not null)
                .GroupBy(column => column.Role)
                .ToArray()
        )
        {
            NoteColumn kept = same.FirstOrDefault(column => NoteHeading.RoleOf(column.Header, out bool exact) is not null && exact)
                ?? same.First();
            for (int at = 0; at < columns.Length; at++)
            {
                bool gives = columns[at].Role == same.Key && !ReferenceEquals(columns[at], kept);
                columns[at] = gives ? columns[at] with { Role = null, Unit = "", UnitFrom = "" } : columns[at];
            }
        }
    }

    private NoteColumn Guess(string header, string[] cells)
    {
        NoteRole? role = NoteHeading.RoleOf(header, out _);
        return With(header, role, role?.Kind is { } kind ? NoteHeading.UnitOf(header, kind) : "", cells);
    }

    private NoteColumn? Said(string header, string meaning, string[] cells)
    {
        string text = meaning.Trim();
        int bracket = text.IndexOf('[', StringComparison.Ordinal);
        string key = (bracket < 0 ? text : text[..bracket]).Trim(),
            unit = bracket < 0 ? "" : text[(bracket + 1)..].TrimEnd(']', ' ');
        if (key == LeftAside)
        {
            return With(header, null, "", cells);
        }

        NoteRole? role = NoteRole.All.FirstOrDefault(one => string.Equals(one.Key, key, StringComparison.OrdinalIgnoreCase));
        if (role is null)
        {
            string allowed = string.Join(", ", NoteRole.All.Select(one => one.Key));
            _problems.Add(
                new Problem("--column", $"\"{header}\" cannot be read as this", key, $"{allowed}, or {LeftAside} to leave it aside")
            );
            return null;
        }

        string symbol = role.Kind is { } kind ? NoteHeading.SymbolOf(unit, kind) : "";
        if (unit.Length > 0 && symbol.Length == 0)
        {
            string allowed = role.Kind is { } of ? QuantityParser.UnitsOf(of) : "no unit";
            _problems.Add(new Problem("--column", $"this is no unit of {role.Label}", unit, allowed));
            return null;
        }

        string named = unit.Length == 0 && role.Kind is { } its ? NoteHeading.UnitOf(header, its) : symbol;
        return With(header, role, named, cells);
    }

    private NoteColumn With(string header, NoteRole? role, string unit, string[] cells)
    {
        string[] examples = [.. cells.Distinct(StringComparer.Ordinal).Take(MostExamples)];
        if (role is null || unit.Length > 0)
        {
            return new NoteColumn(header, role, unit, "", examples);
        }

        (string assumed, string from) = NoteUnits.Assumed(role, cells, _numbers);
        return new NoteColumn(header, role, assumed, from, examples);
    }

    private string[] CellsOf(int at) =>
        [.. _lines.Skip(1).Where(line => at < line.Cells.Length).Select(line => line.Cells[at]).Where(cell => cell.Length > 0)];

    private void Require()
    {
        string headings = string.Join(", ", Columns.Select(column => column.Header));
        if (!Columns.Any(column => column.Role == NoteRole.Tag))
        {
            _problems.Add(new Problem("line 1", "no column is read as the tag of the coil", headings, "--column \"HEADING=tag\""));
        }

        if (!Columns.Any(column => column.Role == NoteRole.Resistance || column.Role == NoteRole.Inductance))
        {
            _problems.Add(
                new Problem(
                    "line 1",
                    "no column is read as a measurement",
                    headings,
                    "--column \"HEADING=dcResistance [kΩ]\" or inductance"
                )
            );
        }
    }
}
