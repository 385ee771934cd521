using System.Text;
using Coilwright.Workshop.Entry;
using static Coilwright.Papers.Markup;

namespace Coilwright.Papers.Figures;

/// <summary>
/// Dimension lines of a drawing in millimetres, each a link to the field that it measures: touched, it moves there; a field in focus
/// lights its own.
/// </summary>
internal sealed class DimensionLines
{
    private const double Tick = 1,
        Finger = 3.2;
    private readonly StringBuilder _svg = new();

    /// <summary>A line along the page between two ends, its size above it.</summary>
    /// <param name="field">Path of the field in the recipe.</param>
    /// <param name="ends">Left and right end.</param>
    /// <param name="yMm">Where, down the page.</param>
    /// <param name="look">What sets it apart.</param>
    public void Level(string field, (double LeftMm, double RightMm) ends, double yMm, DimensionLook look = default)
    {
        (double fromMm, double toMm) = ends;
        Open(field, toMm - fromMm, look);
        Write(
            $"""<rect class="hit" x="{Math.Min(fromMm, (fromMm + toMm) / 2 - 5):0.##}" y="{yMm - Finger:0.##}" """
                + $"""width="{Math.Max(toMm - fromMm, 10):0.##}" height="{2 * Finger:0.##}" fill="transparent"/>"""
        );
        Ends(look, $"""M{fromMm:0.##} {yMm:0.##}V{look.FromMm:0.##}M{toMm:0.##} {yMm:0.##}V{look.FromMm:0.##}""");
        Write(
            $"""<path class="line" d="M{fromMm:0.##} {yMm - Tick:0.##}v{2 * Tick}M{fromMm:0.##} {yMm:0.##}H{toMm:0.##}M{toMm:0.##} """
                + $"""{yMm - Tick:0.##}v{2 * Tick}"/>"""
        );
        double at = look.After ? toMm + 1.2 : (fromMm + toMm) / 2;
        double down = look.Under ? yMm + 3.6 : yMm - 1.2;
        Words(at, look.After ? yMm + 1 : down, look.After ? "start" : "middle", toMm - fromMm);
    }

    /// <summary>A line up the page between two ends, its size beside it.</summary>
    /// <param name="field">Path of the field in the recipe.</param>
    /// <param name="xMm">Where, along the page.</param>
    /// <param name="ends">Upper and lower end, down the page.</param>
    /// <param name="look">What sets it apart.</param>
    public void Upright(string field, double xMm, (double UpperMm, double LowerMm) ends, DimensionLook look = default)
    {
        (double fromMm, double toMm) = ends;
        Open(field, toMm - fromMm, look);
        double middle = (fromMm + toMm) / 2,
            aside = look.Left ? -1.8 : 1.8;
        Write(
            $"""<rect class="hit" x="{xMm + (look.Left ? -11 : -1):0.##}" y="{Math.Min(fromMm, middle - Finger):0.##}" width="12" """
                + $"""height="{Math.Max(toMm - fromMm, 2 * Finger):0.##}" fill="transparent"/>"""
        );
        Ends(look, $"""M{xMm:0.##} {fromMm:0.##}H{look.FromMm:0.##}M{xMm:0.##} {toMm:0.##}H{look.FromMm:0.##}""");
        Write(
            $"""<path class="line" d="M{xMm - Tick:0.##} {fromMm:0.##}h{2 * Tick}M{xMm:0.##} {fromMm:0.##}V{toMm:0.##}M{xMm - Tick:0.##} """
                + $"""{toMm:0.##}h{2 * Tick}"/>"""
        );
        Words(xMm + aside, middle + 1, look.Left ? "end" : "start", toMm - fromMm);
    }

    /// <summary>All of them.</summary>
    public override string ToString() => _svg.ToString();

    /// <summary>Extension lines, from the part that is measured to the dimension line.</summary>
    private void Ends(DimensionLook look, InvariantText path)
    {
        if (look.FromMm is not null)
        {
            _svg.Append("<path class=\"ends\" d=\"").Append(path.ToText()).Append("\"/>");
        }
    }

    private void Open(string field, double sizeMm, DimensionLook look)
    {
        string label = FieldLabels.Of(field);
        Write(
            $"""<a class="dimension{(look.Quiet ? " quiet" : "")}" href="#{Uri.EscapeDataString(field)}" data-dimension="{E(field)}" """
                + $"""aria-label="{E(label)} {sizeMm:0.##} mm">"""
        );
    }

    private void Words(double x, double y, string anchor, double sizeMm) =>
        Write($"""<text x="{x:0.##}" y="{y:0.##}" text-anchor="{anchor}">{sizeMm:0.##}</text></a>""");

    private void Write(InvariantText text) => _svg.Append(text.ToText());
}

/// <summary>What sets a dimension line apart from others.</summary>
/// <param name="FromMm">Where the part that it measures lies, for its extension lines; null draws none.</param>
internal readonly record struct DimensionLook(double? FromMm)
{
    /// <summary>Seen only while its field has the focus.</summary>
    public bool Quiet { get; init; }

    /// <summary>Its size stands behind its end.</summary>
    public bool After { get; init; }

    /// <summary>Its size stands under the line.</summary>
    public bool Under { get; init; }

    /// <summary>Its size stands at the left of the line.</summary>
    public bool Left { get; init; }
}
