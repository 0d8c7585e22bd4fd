namespace Refrigerant.Recovery.Fluids;

/// <summary>One phase at a temperature and a density, with the slopes by temperature at that density; plain SI doubles.</summary>
/// <param name="Pressure">Pa.</param>
/// <param name="InternalEnergy">J/kg.</param>
/// <param name="HeatCapacity">(∂u/∂T) at constant density, J/(kg·K).</param>
/// <param name="PressureByTemperature">(∂p/∂T) at constant density, Pa/K.</param>
internal readonly record struct IsochoricSlopes(double Pressure, double InternalEnergy, double HeatCapacity, double PressureByTemperature);
