namespace Thoubook.Mechanics.Heat;

/// <content>The table. Coefficients in 1e-6 per kelvin, mean from about 20 to 100 °C.</content>
public static partial class Materials
{
    private const string Callister = "Callister, Fundamentals of Materials Science and Engineering, 3rd ed., table B.6 (published)";
    private const string RoomTemperature = "table of linear expansion of metals at room temperature (published)";
    private const string Ranges = "table of ranges by family of alloy, per °F converted (published)";
    private const string Workshop = "workshop table of mean coefficients (published)";

    /// <summary>Every material, in the order of the table.</summary>
    public static IReadOnlyList<Material> All { get; } =
    [
        new("steel", ["mild steel", "carbon steel", "alloy steel", "forged steel"],
        [
            At("plain carbon 1020", 11.7, "Callister, table B.6 (from memory)"),
            At("plain carbon 1040", 11.3, "Callister, table B.6 (from memory)"),
            At("alloy 4140 and 4340", 12.3, "Callister, table B.6 (from memory)"),
            At("mild steel", 11.7, Workshop),
            At("general carbon steel", 11.5, Workshop),
        ]),
        new("nitrided steel", ["nitriding steel"], [At("nitriding steels", 11.7, Ranges)]),
        new("bearing steel", ["ball bearing steel", "ball race steel"], [At("52100", 11.9, "ASM Handbook (from memory)")]),
        new("gauge steel", ["gauge block steel", "micrometer", "tool steel gauge"], [Range("steel gauge blocks", 10.5, 12.5, "ISO 3650 (from memory); 11.5 used in JCGM 100:2008, H.1 (published)")]),
        new("austenitic steel", ["austenitic stainless", "stainless steel", "austenitic valve steel"], [Range("austenitic stainless, valves", 16.2, 18.4, Ranges)]),
        new("cast iron", ["grey iron", "gray iron", "grey cast iron", "iron"],
        [
            At("grey iron G1800 to G4000", 11.4, RoomTemperature),
            At("grey iron", 10.8, Ranges),
            At("general cast iron", 10.5, Workshop),
            At("grey iron, low outlier", 9.0, Workshop),
        ]),
        new("ductile iron", ["nodular iron", "spheroidal graphite iron", "sg iron"], [At("60-40-18", 11.2, Callister), At("80-55-06", 10.6, Callister)]),
        new("cast aluminium", ["aluminium", "aluminum", "cast aluminum", "light alloy", "alloy casting"], [At("cast 356.0", 21.5, Callister), Range("alloys", 21.1, 24.7, Ranges)]),
        new("wrought aluminium", ["wrought aluminum", "forged aluminium", "forged aluminum", "duralumin"], [At("2024", 22.9, Callister), At("6061", 23.6, Callister), At("7075", 23.4, Callister)]),
        new("piston aluminium", ["piston alloy", "silicon aluminium", "aluminium silicon"], [Range("eutectic, 12 % silicon", 19.5, 21.5, "piston handbooks, 20 to 200 °C (from memory)")]),
        new("copper aluminium", ["y alloy", "copper aluminum"], [Range("aluminium-copper-nickel pistons", 23, 24, "piston handbooks (from memory)")]),
        new("magnesium", ["magnesium alloy", "cast magnesium"], [At("AZ31B and AZ91D", 26.0, Callister), Range("alloys", 25.2, 28.8, Ranges)]),
        new("bronze", ["tin bronze", "bearing bronze", "gunmetal", "gun metal", "leaded bronze", "lead bronze"], [At("C93200", 18.0, Callister), Range("cast tin bronzes", 18.0, 18.5, Ranges)]),
        new("phosphor bronze", [], [At("C51000", 17.8, RoomTemperature)]),
        new("aluminium bronze", ["aluminum bronze"], [At("C62300", 16.2, RoomTemperature)]),
        new("brass", ["yellow brass"], [At("C26000", 19.9, Callister), At("C36000", 20.5, Callister)]),
        new("white metal", ["tin base white metal", "babbitt"], [At("about 90 Sn 7 Sb 3 Cu", 23, "bearing handbooks (from memory)"), Range("spread", 21, 24, "bearing handbooks (from memory)")]),
        new("lead white metal", ["lead base white metal"], [At("about 75 Pb 15 Sb 10 Sn", 25, "bearing handbooks (from memory)"), Range("spread", 24, 28, "bearing handbooks (from memory)")]),
        new("copper", [], [At("C11000", 17.0, Callister)]),
        new("silver", [], [At("pure", 19.7, Callister)]),
        new("titanium", ["titanium alloy"], [At("Ti-6Al-4V", 8.6, Callister)]),
        new("sealing film", ["jointing compound", "paper", "cork", "fibre"], [Range("jointings across their thickness, from paper to rubber", 20, 200, "handbooks of papers and sealants (from memory)")]),
        new("invar", ["36 nickel iron"], [At("36 Ni", 1.6, Callister)]),
    ];

    private static ExpansionFigure At(string what, double millionths, string source) => new(what, millionths * 1e-6, millionths * 1e-6, source);

    private static ExpansionFigure Range(string what, double least, double greatest, string source) => new(what, least * 1e-6, greatest * 1e-6, source);
}
