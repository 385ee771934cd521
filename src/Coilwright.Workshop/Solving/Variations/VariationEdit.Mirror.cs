using System.Text.Json.Nodes;
using Coilwright.Physics;
using Coilwright.Physics.Strings;

namespace Coilwright.Workshop.Solving.Variations;

internal sealed partial class VariationEdit
{
    private const double SameM = 1e-6;

    /// <summary>
    /// The pickup in the mirror across the strings: what stood at x stands at −x. Winding directions and magnets stay, so that every number
    /// does.
    /// </summary>
    public void Mirror(PickupModel model)
    {
        if (OwnMirror(model))
        {
            Parts.Add("the pickup is its own mirror image: flatwork, poles and winding stay");
        }
        else
        {
            Turn(model);
            Parts.Add("pole heights, places and string gauges are mirrored; windings and magnets stay");
        }

        Parts.Add("the leads leave on the other side and the label says left-handed");
        Tag("hand", "left");
    }

    private void Turn(PickupModel model)
    {
        foreach (JsonObject pole in Poles)
        {
            Reverse(pole, "tops", one => one.DeepClone());
            Reverse(pole, "positions", one => Negative(one.GetValue<string>()));
        }

        if (_root["strings"] is JsonObject set && model.Strings is { } strings)
        {
            // Without gauges the thickest string is taken to lie at the lowest x: in the mirror it lies at the highest, and that has to be
            // said.
            set["gauges"] ??= new JsonArray([.. strings.Strings.Select(Gauge)]);
            Reverse(set, "gauges", one => one.DeepClone());
        }

        foreach (
            JsonObject position in Coils.Select(coil => coil["position"]).OfType<JsonObject>().Where(position => position["x"] is not null)
        )
        {
            position["x"] = Negative(position["x"]!.GetValue<string>());
        }

        foreach (
            JsonArray centre in (_root["magnets"]?.AsArray() ?? [])
                .Concat(_root["metalwork"]?.AsArray() ?? [])
                .Select(part => part!["centre"])
                .OfType<JsonArray>()
        )
        {
            centre[0] = Negative(centre[0]!.GetValue<string>());
        }
    }

    /// <summary>True when coils, poles and bars stand the same from either side.</summary>
    private static bool OwnMirror(PickupModel model) =>
        model.Coils.All(coil => Math.Abs(coil.Position.XM) < SameM && coil.Poles.All(OwnMirror))
        && model.Bars.All(bar => Math.Abs(bar.CentreM.XM) < SameM);

    private static bool OwnMirror(PoleModel pole)
    {
        int count = pole.PositionsM.Count;
        return Enumerable
            .Range(0, count)
            .All(i =>
                Math.Abs(pole.PositionsM[i] + pole.PositionsM[count - 1 - i]) < SameM
                && Math.Abs(pole.TopsM[i] - pole.TopsM[count - 1 - i]) < SameM
            );
    }

    private static JsonObject Gauge(StringModel one) => new() { ["core"] = Fine(one.CoreDiameterM), ["outer"] = Fine(one.OuterDiameterM) };

    /// <summary>To a hundredth of a micrometre: string gauges come from inches.</summary>
    private static string Fine(double diameterM) =>
        (diameterM * 1e3).ToString("0.#####", System.Globalization.CultureInfo.InvariantCulture) + " mm";

    private static void Reverse(JsonObject owner, string name, Func<JsonNode, JsonNode> turned)
    {
        if (owner[name] is JsonArray list)
        {
            owner[name] = new JsonArray([.. list.Reverse().Select(one => turned(one!))]);
        }
    }

    private static string Negative(string length) => RecipeEdit.Changed(JsonValue.Create(length), -Metres(length));
}
