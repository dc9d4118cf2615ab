using System.Runtime.Intrinsics;

namespace Thoubook.Mechanics.Circuits;

/// <summary>The rough pipes of a circuit, four at a time: what each loses at its flow, and how that rises with the flow.</summary>
internal sealed class RoughPipes(int count)
{
    private readonly double[] _rough = new double[Padded(count)];
    private readonly double[] _reynolds = new double[Padded(count)];
    private readonly double[] _friction = new double[Padded(count)];
    private readonly double[] _heads = new double[Padded(count)];

    public int Count { get; } = count;

    /// <summary>Prepares one pipe for an operating point.</summary>
    /// <param name="i">Which.</param>
    /// <param name="v">[any] numbers of a <see cref="Pipe"/>.</param>
    /// <param name="viscosity">[Pa s]</param>
    /// <param name="density">[kg/m³]</param>
    public void Prepare(int i, ReadOnlySpan<double> v, double viscosity, double density)
    {
        var inverse = 1 / v[0];
        var perRe2 = viscosity * viscosity / (2 * density) * inverse * inverse;
        _rough[i] = 0.27 * v[2] * inverse;
        _reynolds[i] = density * inverse / (viscosity * (Math.PI / 4) * v[4]);
        _friction[i] = perRe2 * v[1] * inverse;
        _heads[i] = perRe2 * v[3];
    }

    /// <summary>[Pa] lost at a flow by a pipe of these numbers.</summary>
    public static double Loss(ReadOnlySpan<double> v, double flow, double viscosity, double density)
    {
        var perRe2 = viscosity * viscosity / (2 * density * v[0] * v[0]);
        return One(flow, 0.27 * v[2] / v[0], density * v[0] / (viscosity * Math.PI / 4 * v[0] * v[0] * v[4]), perRe2 * v[1] / v[0], perRe2 * v[3]).Loss;
    }

    /// <summary>Losses and their slopes at these flows.</summary>
    /// <param name="flows">[m³/s] room for a multiple of four.</param>
    /// <param name="losses">[Pa] filled in, with the sign of the flow.</param>
    /// <param name="slopes">[any] Pa for each m³/s, filled in.</param>
    public void Losses(ReadOnlySpan<double> flows, Span<double> losses, Span<double> slopes)
    {
        var i = 0;
        if (Vector256.IsHardwareAccelerated)
        {
            for (; i < Count; i += 4)
                Four(i, flows, losses, slopes);
        }

        for (; i < Count; i++)
            (losses[i], slopes[i]) = One(flows[i], _rough[i], _reynolds[i], _friction[i], _heads[i]);
    }

    public static int Padded(int count) => (count + 3) / 4 * 4;

    /// <summary>One pipe, as plainly as the four.</summary>
    internal static (double Loss, double Slope) One(double flow, double rough, double reynolds, double friction, double heads)
    {
        var re = Math.Abs(flow) * reynolds;
        if (re < Creeping)
        {
            var (creeping, square) = (friction * 64 * reynolds, heads * re * reynolds);
            return ((creeping + square) * flow, creeping + (2 * square));
        }

        var smooth = SevenToNineTenths * Math.Exp(-0.9 * Math.Log(re));
        var wall = smooth + rough;
        var root = -2.457 * Math.Log(wall);
        var r3 = root * root * root;
        var r15 = r3 * r3 * r3 * r3 * r3;
        var a = r15 * root;
        var b = Sixteenth(37530 / re);
        var laminar = Twelfth(8 / re);
        var ab = a + b;
        var turbulent = 1 / (ab * Math.Sqrt(ab));
        var sum = laminar + turbulent;
        var f = 8 * Math.Exp(Math.Log(sum) / 12);
        var abSlope = 16 * ((r15 * 2.457 * 0.9 * smooth / wall) - b);
        var lnSlope = ((-12 * laminar) - (1.5 * turbulent / ab * abSlope)) / (12 * sum);
        var loss = ((friction * f) + heads) * re * re;
        var slope = ((friction * f * (2 + lnSlope)) + (2 * heads)) * re * reynolds;
        return (Math.CopySign(loss, flow), slope);
    }

    private const double Creeping = 1e-3;

    /// <summary>7 to the power of nine tenths.</summary>
    private const double SevenToNineTenths = 5.762198777951310;

    private void Four(int i, ReadOnlySpan<double> flows, Span<double> losses, Span<double> slopes)
    {
        var flow = Vector256.Create(flows[i..]);
        var reynolds = Vector256.Create<double>(_reynolds, i);
        var friction = Vector256.Create<double>(_friction, i);
        var heads = Vector256.Create<double>(_heads, i);
        var exact = Vector256.Abs(flow) * reynolds;
        var re = Vector256.Max(exact, Vector256.Create(Creeping));
        var smooth = Vector256.Exp(Vector256.Log(re) * -0.9) * SevenToNineTenths;
        var wall = smooth + Vector256.Create<double>(_rough, i);
        var root = Vector256.Log(wall) * -2.457;
        var r3 = root * root * root;
        var r6 = r3 * r3;
        var r15 = r6 * r6 * r3;
        var a = r15 * root;
        var inverse = Vector256<double>.One / re;
        var b = inverse * 37530.0;
        b *= b;
        b *= b;
        b *= b;
        b *= b;
        var e = inverse * 8.0;
        e = e * e * e;
        e *= e;
        var laminar = e * e;
        var ab = a + b;
        var turbulent = Vector256<double>.One / (ab * Vector256.Sqrt(ab));
        var sum = laminar + turbulent;
        var f = Vector256.Exp(Vector256.Log(sum) * (1.0 / 12)) * 8.0;
        var abSlope = ((r15 * (2.457 * 0.9) * smooth / wall) - b) * 16.0;
        var lnSlope = ((laminar * -12.0) - (turbulent / ab * abSlope * 1.5)) / (sum * 12.0);
        var loss = ((friction * f) + heads) * re * re;
        var slope = ((friction * f * (lnSlope + Vector256.Create(2.0))) + (heads * 2.0)) * re * reynolds;
        loss = Vector256.CopySign(loss, flow);

        // Oil that hardly moves is laminar to the last figure.
        var isCreeping = Vector256.LessThan(exact, Vector256.Create(Creeping));
        if (isCreeping != Vector256<double>.Zero)
        {
            var creeping = friction * 64.0 * reynolds;
            var square = heads * exact * reynolds;
            loss = Vector256.ConditionalSelect(isCreeping, (creeping + square) * flow, loss);
            slope = Vector256.ConditionalSelect(isCreeping, creeping + (square * 2.0), slope);
        }

        loss.CopyTo(losses[i..]);
        slope.CopyTo(slopes[i..]);
    }

    private static double Sixteenth(double x)
    {
        x *= x;
        x *= x;
        x *= x;
        return x * x;
    }

    private static double Twelfth(double x)
    {
        x = x * x * x;
        x *= x;
        return x * x;
    }
}
