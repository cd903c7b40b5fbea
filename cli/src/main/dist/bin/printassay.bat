@echo off
rem Starts printassay. Needs Java 17 or newer: JAVA_HOME, or java on the PATH.
setlocal
set "LIB=%~dp0..\lib"
set "JAVA=java"
if defined JAVA_HOME set "JAVA=%JAVA_HOME%\bin\java"
if not defined PRINTASSAY_HEAP set "PRINTASSAY_HEAP=640m"
set "COMPILING=-XX:Tier4InvocationThreshold=100000 -XX:Tier4MinInvocationThreshold=50000 -XX:Tier4CompileThreshold=200000 -XX:Tier4BackEdgeThreshold=1000000"
if "%~1"=="chart" set "COMPILING=-XX:TieredStopAtLevel=1"
"%JAVA%" -Xmx%PRINTASSAY_HEAP% -XX:+UseSerialGC -Xshare:auto %COMPILING% -Djava.awt.headless=true -cp "%LIB%\*" org.printassay.cli.Main %*
exit /b %ERRORLEVEL%
