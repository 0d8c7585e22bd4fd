using System;
namespace Refrigerant.Recovery.Estimation;
internal static class Knob { static readonly System.Collections.Concurrent.ConcurrentDictionary<string,double> C = new(); public static double Get(string n, double d) => C.GetOrAdd(n, k => { var s = Environment.GetEnvironmentVariable(k); return string.IsNullOrEmpty(s) ? d : double.Parse(s, System.Globalization.CultureInfo.InvariantCulture); }); }
