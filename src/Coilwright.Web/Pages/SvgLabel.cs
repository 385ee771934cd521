using System.Globalization;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;

namespace Coilwright.Web.Pages;

/// <summary>A text element of a drawing; Razor keeps that tag's name for itself.</summary>
public sealed class SvgLabel : ComponentBase
{
    [Parameter, EditorRequired]
    public string X { get; set; } = "";

    [Parameter, EditorRequired]
    public string Y { get; set; } = "";

    [Parameter]
    public bool AtEnd { get; set; }

    [Parameter, EditorRequired]
    public string Words { get; set; } = "";

    public static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    protected override void BuildRenderTree(RenderTreeBuilder builder)
    {
        builder.OpenElement(0, "text");
        builder.AddAttribute(1, "x", X);
        builder.AddAttribute(2, "y", Y);
        builder.AddAttribute(3, "text-anchor", AtEnd ? "end" : "start");
        builder.AddContent(4, Words);
        builder.CloseElement();
    }
}
