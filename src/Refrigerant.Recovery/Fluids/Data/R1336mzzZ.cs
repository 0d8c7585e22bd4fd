using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-1336mzz(Z), cis-1,1,1,4,4,4-hexafluoro-2-butene. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R1336mzzZ
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-1336mzz(Z)",
        Name = "cis-1,1,1,4,4,4-hexafluoro-2-butene",
        CasNumber = "692-49-9",
        Source = "Mark O. McLinden and Ryo Akasaka, (2020), Thermodynamic Properties of "
            + "cis-1,1,1,4,4,4-Hexafluorobutene [R-1336mzz(Z)]: Vapor Pressure, (p, $rho$, T) Behavior, and Speed of "
            + "Sound Measurements and Equation of State, J. Chem. Eng. Data, vol. 65, 4201-4214, "
            + "doi:10.1021/acs.jced.9b01198",
        MolarMass = 0.164056,
        GasConstant = 8.314462618,
        ReducingTemperature = 444.5,
        ReducingMolarDensity = 3044,
        CriticalTemperature = 444.5,
        CriticalPressure = 2903000,
        CriticalMolarDensity = 3044,
        AcentricFactor = 0.386,
        MinimumTemperature = 182.65,
        MaximumTemperature = 500,
        MaximumPressure = 46000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 20.2, 1.6557930258717661 },
                { 5.275, 5.172103487064117 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.036673095, 4, 1, 0 },
                { 1.1956619, 1, 0.26, 0 },
                { -1.8462376, 1, 1, 0 },
                { -0.60599297, 2, 1, 0 },
                { 0.24973833, 3, 0.515, 0 },
                { -1.2548278, 1, 2.6, 2 },
                { -1.4389612, 3, 3, 2 },
                { 0.35168887, 2, 0.74, 1 },
                { -0.82104051, 2, 2.68, 2 },
                { -0.031747538, 7, 0.96, 1 },
            },
            Gaussian = new double[,]
            {
                { 1.0281388, 1, 1.06, 0.746, 1.118, 0.962, 1.225 },
                { 0.21094074, 1, 3.4, 2.406, 3.065, 1.111, 0.161 },
                { 0.701701, 3, 1.617, 0.7804, 0.7274, 1.135, 1.231 },
                { 0.24638528, 2, 1.865, 1.25, 0.8435, 1.163, 1.395 },
                { -1.5295034, 3, 1.737, 0.6826, 0.6754, 0.969, 0.9072 },
                { 0.33424978, 2, 3.29, 1.677, 0.436, 1.286, 0.958 },
                { 1.011324, 2, 1.242, 1.762, 3.808, 1.274, 0.412 },
                { -0.023457179, 1, 2, 21, 1888, 1.056, 0.944 },
            },
        },
    };
}
