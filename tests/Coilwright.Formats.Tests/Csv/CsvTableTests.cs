using Coilwright.Formats.Csv;

namespace Coilwright.Formats.Tests.Csv;

public sealed class CsvTableTests
{
    [Fact]
    public void Plain_cells_stand_as_they_are_and_every_line_ends()
    {
        CsvTable table = new("frequency [Hz]", "gain [dB]");
        table.Add("20", "-0.0312");
        table.Add("1E-05", "");

        Assert.Equal("frequency [Hz],gain [dB]\n20,-0.0312\n1E-05,\n", table.ToString());
    }

    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+cmd", "'+cmd")]
    [InlineData("-2+3", "'-2+3")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData("\t=1", "'\t=1")]
    [InlineData("\r=1", "\"'\r=1\"")]
    [InlineData("=A1,B1", "\"'=A1,B1\"")]
    [InlineData("-5", "-5")]
    [InlineData("+1.5e3", "+1.5e3")]
    [InlineData("B-7", "B-7")]
    [InlineData("a,b", "\"a,b\"")]
    [InlineData("a \"b\"", "\"a \"\"b\"\"\"")]
    [InlineData("a\nb", "\"a\nb\"")]
    public void A_cell_that_a_spreadsheet_would_run_is_guarded_and_a_number_is_not(string cell, string written)
    {
        CsvTable table = new("tag", cell);
        table.Add("x", cell);

        Assert.Equal($"tag,{written}\nx,{written}\n", table.ToString());
    }
}
