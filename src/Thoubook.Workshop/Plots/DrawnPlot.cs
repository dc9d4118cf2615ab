using System.Text;
using ScottPlot;
using Thoubook.Record;

namespace Thoubook.Workshop.Plots;

/// <summary>A plot that is drawn and can be kept as SVG or PNG.</summary>
public sealed class DrawnPlot
{
    private const int Width = 1000;
    private const int Height = 620;
    private readonly Plot _plot;
    private readonly int _height;

    internal DrawnPlot(Plot plot, int height = Height)
    {
        _plot = plot;
        _height = height;
    }

    public string Svg() => _plot.GetSvgXml(Width, _height);

    public byte[] Png() => _plot.GetImageBytes(Width, _height, ImageFormat.Png);

    /// <summary>Writes a new file, in the form that its name ends in; gives what stood in the way.</summary>
    public Problem? Save(string file)
    {
        var isSvg = file.EndsWith(".svg", StringComparison.OrdinalIgnoreCase);
        if (!isSvg && !file.EndsWith(".png", StringComparison.OrdinalIgnoreCase))
            return new("plot-form", "plot", $"\"{file}\"", "A plot is an SVG or a PNG file.", "Let its name end in .svg or .png.");
        if (Path.Exists(file))
            return new("file-exists", "plot", $"\"{file}\"", "A new file: nothing is overwritten.", "Name another, or move that one away.");
        try
        {
            using var stream = new FileStream(file, FileMode.CreateNew, FileAccess.Write);
            stream.Write(isSvg ? Encoding.UTF8.GetBytes(Svg()) : Png());
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new("file-not-written", "plot", $"\"{file}\"", e.Message, "Name a file in a folder that may be written.");
        }
    }
}
