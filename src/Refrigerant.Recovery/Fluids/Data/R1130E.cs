using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-1130(E), trans-1,2-dichloroethene. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R1130E
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-1130(E)",
        Name = "trans-1,2-dichloroethene",
        CasNumber = "156-60-5",
        Source = "Marcia L. Huber and Andrei F. Kazakov and Eric W. Lemmon, (2025), Equation of State for the "
            + "Thermodynamic Properties of Trans-1,2-dichloroethene [R-1130(E)], International Journal of "
            + "Thermophysics, vol. 46, 76, doi:10.1007/s10765-025-03535-3",
        MolarMass = 0.09694328,
        GasConstant = 8.314462618,
        ReducingTemperature = 515.69,
        ReducingMolarDensity = 4540,
        CriticalTemperature = 515.69,
        CriticalPressure = 5255460,
        CriticalMolarDensity = 4540,
        AcentricFactor = 0.194,
        MinimumTemperature = 223.31,
        MaximumTemperature = 525,
        MaximumPressure = 30000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 2.697, 0.7116678624755182 },
                { 6.264, 2.4161802633365004 },
                { 3.041, 7.814772440807461 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.0256, 4, 1, 0 },
                { 0.9, 1, 0.188, 0 },
                { 0.054, 2, 0.2496, 0 },
                { 0.153, 3, 0.458, 0 },
                { -0.49787364754, 1, 0.77, 0 },
                { -0.99000024872, 2, 1.0385, 0 },
            },
            Exponential = new double[,]
            {
                { -0.318, 1, 0.9, 2.43, 1 },
                { -0.973, 1, 1.21, 1.236548, 2 },
                { -0.098, 1, 4.7, 0.722, 3 },
                { -0.034, 2, 6.61575, 1.483, 3 },
                { -0.0971, 3, 2.257, 0.2255, 3 },
            },
            Gaussian = new double[,]
            {
                { -0.26, 1, 3.2664, 5.10245, 0, 1, -0.31662 },
                { -0.135, 2, 3.59, 4.572, 0, 1, 0.065 },
                { -0.21, 1, 1.2, 4.63, 0, 1, -0.28568 },
                { -0.197, 1, 1.42, 1.785, 0, 1, 0.99 },
            },
        },
    };
}
