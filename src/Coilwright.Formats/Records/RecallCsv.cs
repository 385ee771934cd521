using Coilwright.Formats.Csv;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Formats.Records;

/// <summary>Writes what is recalled as a table, a line for each piece and each coil.</summary>
public static class RecallCsv
{
    public static string Write(RecallList list)
    {
        CsvTable table = new(RecallList.Columns);
        foreach (IReadOnlyList<string> row in list.Rows)
        {
            table.Add(row);
        }

        return table.ToString();
    }
}
