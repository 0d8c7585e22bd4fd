namespace Refrigerant.Recovery.Estimation.Calibration;
internal static class Knob { public static double Get(string n, double d) => System.Environment.GetEnvironmentVariable(n) is string s ? double.Parse(s, System.Globalization.CultureInfo.InvariantCulture) : d; }
