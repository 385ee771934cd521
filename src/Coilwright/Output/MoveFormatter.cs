using System.Globalization;
using Coilwright.Application.Shops;
using Coilwright.Workshop.Backups;

namespace Coilwright.Output;

/// <summary>What was copied, for the terminal.</summary>
internal static class MoveFormatter
{
    /// <summary>Digits of a hash that a person compares.</summary>
    private const int Digits = 12;

    public static void Write(TextWriter output, MoveOutcome outcome, string target)
    {
        foreach (MovedTable table in outcome.Tables.Where(one => one.Rows > 0))
        {
            output.WriteLine(
                string.Create(CultureInfo.InvariantCulture, $"  {table.Name, -18} {table.Rows, 8:N0}  {table.Hash[..Digits]}")
            );
        }

        output.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{outcome.Name} is in {target}: {outcome.Rows:N0} rows, every table read back and found the same."
            )
        );
        output.WriteLine("The shop that was read stays as it is. Serve one of the two from now on, and put the other away.");
    }
}
