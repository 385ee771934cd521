namespace Coilwright.Physics.BoundaryElements.Metalwork;

/// <summary>Vectors in space.</summary>
internal static class Space
{
    public static Vector3M Plus(Vector3M a, Vector3M b) => new(a.XM + b.XM, a.YM + b.YM, a.ZM + b.ZM);

    public static Vector3M Minus(Vector3M a, Vector3M b) => new(a.XM - b.XM, a.YM - b.YM, a.ZM - b.ZM);

    public static Vector3M Times(Vector3M a, double factor) => new(a.XM * factor, a.YM * factor, a.ZM * factor);

    public static double Dot(Vector3M a, Vector3M b) => a.XM * b.XM + a.YM * b.YM + a.ZM * b.ZM;

    public static Vector3M Cross(Vector3M a, Vector3M b) =>
        new(a.YM * b.ZM - a.ZM * b.YM, a.ZM * b.XM - a.XM * b.ZM, a.XM * b.YM - a.YM * b.XM);

    public static double Length(Vector3M a) => Math.Sqrt(Dot(a, a));
}
