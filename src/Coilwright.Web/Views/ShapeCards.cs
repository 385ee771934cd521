using Coilwright.Application.Forecasts;

namespace Coilwright.Web.Views;

/// <summary>The cards of all shapes, drawn once for every page that shows them.</summary>
/// <param name="shapes">The shapes with their forecasts.</param>
public sealed class ShapeCards(ForecastShapes shapes)
{
    private readonly Lazy<IReadOnlyList<ShapeCard>> _all = new(() => ShapeCard.Draw(shapes.All));

    /// <summary>All of them.</summary>
    public IReadOnlyList<ShapeCard> All => _all.Value;

    /// <summary>The card of a shape; null when there is no such shape.</summary>
    public ShapeCard? Find(string key) => All.FirstOrDefault(card => card.Shape.Key == key);
}
