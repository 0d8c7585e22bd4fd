namespace Refrigerant.Recovery.Findings;

/// <summary>The editions that figures were taken from, said once.</summary>
internal static class Editions
{
    public const string Cfr40 = "undated copy with the text in force from 2018-01-01; check the current eCFR";
    public const string Cfr49 = "undated copy; check the current eCFR";
    public const string UnModelRegulations = "17th revised edition, 2011";
    public const string Adr = "ADR/RID 2025, Norwegian edition";
    public const string Ahri700 = "2006 with addenda";
    public const string GuidelineK = "2004, as reported by a trade journal";
    public const string Trg102 = "withdrawn";
    public const string UsStandardAtmosphere = "1976";
    public const string None = "none";
}
